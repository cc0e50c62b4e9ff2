import type { EditResult } from '../../shared-core/plan/edits/changing.ts'
import { useBoardStore } from './useBoard.ts'

/**
 * Writes what a named edit returned, or says why it could not be made. True when it was written. `words` are said after
 * a success.
 */
export function usePerform(): (made: EditResult, words?: string) => boolean {
  const store = useBoardStore()
  return (made, words) => {
    if (!made.ok) {
      store.say(made.message)
      return false
    }
    const { mayEdit, edit } = store.getState()
    edit(made.edit)
    if (mayEdit && words !== undefined) store.say(words)
    return mayEdit
  }
}
