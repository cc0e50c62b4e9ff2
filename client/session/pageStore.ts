import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import type { Problem } from '../../shared-core/plan/reading/problem.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { PrintMark } from '../../shared-core/stands/printMark.ts'

/** A question or a list in the middle of the page; one at a time. */
export type Asking =
  | { readonly kind: 'shortcuts' }
  | { readonly kind: 'invite' }
  | { readonly kind: 'proof-sheet' }
  | { readonly kind: 'agreed' }
  | { readonly kind: 'stand-ins' }
  | { readonly kind: 'screen-check' }
  | { readonly kind: 'order-list' }
  | { readonly kind: 'gel-cuts' }
  | { readonly kind: 'power' }
  | { readonly kind: 'rig-sheet' }
  | { readonly kind: 'print' }
  | { readonly kind: 'print-differs'; readonly mark: PrintMark }
  | { readonly kind: 'meter-book' }
  | { readonly kind: 'test-frame' }
  | { readonly kind: 'notebook' }
  | { readonly kind: 'look-change' }
  | { readonly kind: 'as-shot' }
  | { readonly kind: 'hand-over' }
  | { readonly kind: 'replace'; readonly plan: Plan; readonly fileName: string; readonly repairs: readonly string[] }
  | { readonly kind: 'bad-file'; readonly fileName: string; readonly problems: readonly Problem[] }
  | { readonly kind: 'refused'; readonly plan: Plan; readonly reason: string }

/** How far the sheet about the picked thing is up. */
export type Sheet = 'shut' | 'low' | 'tall'

interface Page {
  readonly asking: Asking | null
  readonly sheet: Sheet
}

/** What the page asks, apart from the board: it belongs to no plan and nobody else sees it. */
export const pageStore = createStore<Page>()(() => ({ asking: null, sheet: 'shut' }))

export function ask(asking: Asking | null): void {
  pageStore.setState({ asking })
}

export function useAsking(): Asking | null {
  return useStore(pageStore, (page) => page.asking)
}

export function setSheet(sheet: Sheet): void {
  pageStore.setState({ sheet })
}

export function useSheet(): Sheet {
  return useStore(pageStore, (page) => page.sheet)
}
