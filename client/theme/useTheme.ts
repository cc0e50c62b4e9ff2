import { useSyncExternalStore } from 'react'
import { remembered } from '../session/remembered.ts'

export type Theme = 'studio' | 'torch' | 'bright'

export const themes = [
  { value: 'studio', label: 'Dim' },
  { value: 'torch', label: 'Torch-dark' },
  { value: 'bright', label: 'Bright' },
] as const satisfies readonly { readonly value: Theme; readonly label: string }[]

const listeners = new Set<() => void>()

/** Puts the theme of this person's room on the page; to be called before the first drawing. */
export function showTheme(theme: Theme = remembered.theme()): void {
  document.documentElement.dataset.theme = theme
  const ground = getComputedStyle(document.documentElement).getPropertyValue('--ground')
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', ground)
}

/** The room this person is in, and how to change it. Remembered on this device. */
export function useTheme(): readonly [Theme, (theme: Theme) => void] {
  const theme = useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => remembered.theme(),
  )
  return [
    theme,
    (next) => {
      remembered.keepTheme(next)
      showTheme(next)
      listeners.forEach((listener) => listener())
    },
  ]
}
