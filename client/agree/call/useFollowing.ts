import { useEffect } from 'react'
import type { Notes } from '../../../shared-core/notes/notes.ts'
import { useNotes, useReopening } from '../../notes/useNotes.ts'
import type { KeptThing, Person } from '../../session/board.ts'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'

/**
 * Keeps this board's view as the leader's: look, pick, single, view, Before, and what they have reopened. It never
 * edits. Null follows nobody, and what was reopened because somebody else had is left.
 * @returns whether the leader looks at a Before that this page does not know
 */
export function useFollowing(leader: Person | null): boolean {
  const board = useBoardStore()
  const reopening = useReopening()
  const { lookId = null, selection = null, sees = null, seatId = '', name = '' } = leader ?? {}
  const reopenedKey = keyOf(sees?.reopened)
  const isHere = useBoard((state) => keyOf(state.reopened?.kept) === reopenedKey)
  // It may be so new that it has not arrived yet.
  const isKept = useNotes(({ notes }) => reopenedKey === null || keptOf(notes, reopenedKey))
  const follows = leader !== null
  const seesBefore = useBoard((state) => state.seesBefore)

  useEffect(() => {
    if (!follows || !isKept) return
    if (reopenedKey === null) return reopening.leave()
    const [kind, id] = partsOf(reopenedKey)
    void (kind === 'lock' ? reopening.lock(id) : reopening.thatOne(id)).then((trouble) => trouble !== null && board.say(trouble))
    return () => reopening.leave()
  }, [board, reopening, follows, isKept, reopenedKey])

  useEffect(() => {
    // Of another plan the look may have no such light, and none of its own Before.
    if (sees === null || lookId === null || !isHere) return
    const now = board.getState()
    if (now.lookId !== lookId) now.showLook(lookId)
    now.select(selection)
    if (now.soloLightId !== sees.soloLightId) now.solo(sees.soloLightId)
    if (sees.before) now.seeBeforeOf({ seatId, name })
    else if (now.seesBefore) now.seeBefore(false)
    if (now.frameView !== sees.view) now.lookAs(sees.view)
  }, [board, lookId, selection, sees, seatId, name, isHere])

  useEffect(() => {
    if (!follows) return
    return () => {
      if (board.getState().beforeOfAnother !== null) board.getState().seeBefore(false)
    }
  }, [board, follows])

  return sees?.before === true && !seesBefore && isHere
}

function keyOf(kept: KeptThing | null | undefined): string | null {
  return kept === null || kept === undefined ? null : `${kept.kind} ${kept.id}`
}

function partsOf(key: string): [kind: KeptThing['kind'], id: string] {
  return key.split(' ') as [KeptThing['kind'], string]
}

function keptOf(notes: Notes, key: string): boolean {
  const [kind, id] = partsOf(key)
  return Object.hasOwn(kind === 'lock' ? notes.locks : notes.thatOnes, id)
}
