import { useEffect } from 'react'
import { useStore } from 'zustand'
import { useBoard } from '../session/useBoard.ts'
import { askOfLook, isSameLook, lookAnswers, type LookAnswer, type LookQuestion } from './lookAnswers.ts'

export type ShownAnswer<Kind extends LookQuestion> = LookAnswer<Kind> & {
  /** The plan has changed since, and its own answer is not here yet. */
  readonly isOld: boolean
}

/** The answer to a question about the look on the board, asked anew whenever the plan has changed and rests. */
export function useLookAnswer<Kind extends LookQuestion>(kind: Kind): ShownAnswer<Kind> {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const found = useStore(lookAnswers(kind))
  useEffect(() => askOfLook(kind, plan, lookId), [kind, plan, lookId])
  const isOfLook = found.lookId === lookId
  const isOld = found.plan === null || !isSameLook(found.plan, found.lookId, plan, lookId)
  return isOfLook ? { ...found, isOld } : { plan: null, lookId, answer: null, share: null, trouble: '', isOld: true }
}
