import { useMemo } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Snag } from '../../../shared-core/predict/snag.ts'

/** The snag whose cure lies over the board to be looked at. */
export const lookedSnagStore = createStore<{ readonly snag: Snag | null }>()(() => ({ snag: null }))

/**
 * The snags, with the one whose cure is looked at: the cure silences it on the board, and a line that went with it
 * would take the cure away that is being looked at.
 */
export function useWithLooked(snags: readonly Snag[]): readonly Snag[] {
  const looked = useStore(lookedSnagStore, ({ snag }) => snag)
  return useMemo(() => (looked === null || snags.some(({ key }) => key === looked.key) ? snags : [...snags, looked]), [snags, looked])
}

/** Nobody looks at a cure of this snag any more. */
export function forgetLooked(key: string): void {
  if (lookedSnagStore.getState().snag?.key === key) lookedSnagStore.setState({ snag: null })
}
