import { useEffect, useState } from 'react'

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
