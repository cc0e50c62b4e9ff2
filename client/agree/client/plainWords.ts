import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import { remembered } from '../../session/remembered.ts'
import { useBoard } from '../../session/useBoard.ts'

const faceStore = createStore<{ readonly numbersShown: boolean }>()(() => ({ numbersShown: remembered.numbersShown() }))

/** The board with its numbers, or plain words; kept on this device, for whichever client sits at it. */
export function showNumbers(numbersShown: boolean): void {
  remembered.keepNumbersShown(numbersShown)
  faceStore.setState({ numbersShown })
}

/** Whether this person is spoken to in plain words: a client who has not asked for the numbers. */
export function usePlainWords(): boolean {
  const isClient = useBoard((board) => board.role === 'client')
  const numbersShown = useStore(faceStore, (face) => face.numbersShown)
  return isClient && !numbersShown
}
