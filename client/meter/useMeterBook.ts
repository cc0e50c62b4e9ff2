import { useDeferredValue, useMemo } from 'react'
import { learn, type Learned } from '../../shared-core/meter/learn.ts'
import { questionsOf, type Question } from '../../shared-core/meter/questions.ts'
import { readingOf } from '../../shared-core/meter/readingOf.ts'
import { newId } from '../../shared-core/plan/newId.ts'
import type { Reading } from '../../shared-core/rig/readings.ts'
import { useRig, useRigStore } from '../rig/useRig.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'

export interface MeterBookNow {
  readonly learned: Learned
  readonly questions: readonly Question[]
  /** Writes a reading and what follows from it for the plan; gives its key. */
  readonly take: (question: Question, fNumber: number, said: string) => string
  readonly accept: (key: string) => void
  readonly withdraw: (key: string) => void
}

/** The readings of the job, what they teach, and what is to be read of the look on the board. */
export function useMeterBook(): MeterBookNow {
  const plan = useDeferredValue(useBoard((board) => board.plan))
  const lookId = useBoard((board) => board.lookId)
  const readings = useRig(({ rig }) => rig.readings)
  const board = useBoardStore()
  const rig = useRigStore()
  const learned = useMemo(() => learn(plan, readings), [plan, readings])
  const questions = useMemo(() => (plan.looks[lookId] ? questionsOf(plan, lookId, learned) : []), [plan, lookId, learned])
  const acts = useMemo(() => {
    /** What all readings teach goes into the plan by the hand that brought the last of them. */
    function write(key: string, entry: Reading): void {
      rig.getState().write([{ kind: 'readings', key, entry }])
      const { plan: now, mayEdit, edit } = board.getState()
      const teaches = learn(now, { ...rig.getState().rig.readings, [key]: entry }).edit
      if (mayEdit && teaches !== null) edit(teaches)
    }
    const change = (key: string, made: (entry: Reading) => Reading): void => {
      const entry = rig.getState().rig.readings[key]
      if (entry !== undefined) write(key, made(entry))
    }
    return {
      take(question: Question, fNumber: number, said: string): string {
        const key = newId()
        const { rig: kept, writtenBy } = rig.getState()
        write(key, readingOf(board.getState().plan, kept.readings, question, { fNumber, said, by: writtenBy() }))
        return key
      },
      accept: (key: string) => change(key, (entry) => ({ ...entry, accepted: rig.getState().writtenBy() })),
      withdraw: (key: string) => change(key, (entry) => ({ ...entry, withdrawn: rig.getState().writtenBy() })),
    }
  }, [board, rig])
  return { learned, questions, ...acts }
}
