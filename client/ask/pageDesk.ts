import { AskDesk } from './askDesk.ts'

const shared = new AskDesk(() => new Worker(new URL('./askWorker.ts', import.meta.url), { type: 'module' }))

/** The page's one desk. */
export function askDesk(): AskDesk {
  return shared
}

// From the start, not with the first question: that one may come of what a hand just took hold of.
addEventListener('pointerdown', () => shared.hand(true), true)
for (const end of ['pointerup', 'pointercancel']) addEventListener(end, () => shared.hand(false), true)
// Not in capture: what loses the focus inside the page is no hand that left it.
addEventListener('blur', () => shared.hand(false))
