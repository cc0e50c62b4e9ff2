import type { HTMLAttributes } from 'react'
import { usePencil } from './pencilStore.ts'

/** Makes a thing that is no button a place to pin to while the pencil is on. @param pin "gel:<id>:<light>" @param words what it is */
export function usePinnable(pin: string | null, words: string): HTMLAttributes<HTMLElement> & { readonly 'data-pin'?: string } {
  const isOn = usePencil((state) => state.isOn)
  if (!isOn || pin === null) return {}
  return { 'data-pin': pin, role: 'button', tabIndex: 0, 'aria-label': `Pin a note to ${words}` }
}
