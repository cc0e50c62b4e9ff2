import { useEffect, useState } from 'react'
import type { ViewKind } from '../view/projection.ts'

/** The theme's greys as a canvas takes them, and the few that only the Floor needs. */
export interface Palette {
  readonly outside: string
  readonly floor: string
  readonly grid: string
  readonly line: string
  readonly lineStrong: string
  readonly ink: string
  readonly inkSoft: string
  readonly inkFaint: string
  readonly tape: string
  readonly body: string
  readonly focus: string
}

/** The palette of the theme in use; changes with it. */
export function usePalette(): Palette {
  const [palette, setPalette] = useState(readPalette)
  useEffect(() => {
    const observer = new MutationObserver(() => setPalette(readPalette()))
    observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'class', 'style'] })
    return () => observer.disconnect()
  }, [])
  return palette
}

function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string) => style.getPropertyValue(name).trim()
  return {
    outside: token('--ground'),
    floor: token('--raised'),
    grid: token('--line'),
    line: token('--line-strong'),
    lineStrong: token('--ink-faint'),
    ink: token('--ink'),
    inkSoft: token('--ink-soft'),
    inkFaint: token('--ink-faint'),
    tape: token('--tape'),
    body: token('--field'),
    focus: token('--focus'),
  }
}

/** A `#rrggbb` colour let through in part, 0 clear to 1 solid; other notations stay as they are. */
export function withAlpha(colour: string, alpha: number): string {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) return colour
  return colour + Math.round(alpha * 255).toString(16).padStart(2, '0')
}

/** From above, bodies all but hide what is under them; seen level, things stand one behind the other and are see-through. */
export function bodyAlpha(view: ViewKind): number {
  return view === 'floor' ? 0.86 : 0.5
}
