import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import { useMemo } from 'react'
import { looksInOrder } from '../session/looksInOrder.ts'
import { useBoard } from '../session/useBoard.ts'

/** Looks left out of what is ordered and cut, on this device. The order list and the cuts speak of the same looks. */
const leftOut = createStore<{ readonly lookIds: readonly string[] }>()(() => ({ lookIds: [] }))

export function turnLook(lookId: string, on: boolean): void {
  leftOut.setState(({ lookIds }) => ({ lookIds: [...lookIds.filter((id) => id !== lookId), ...(on ? [] : [lookId])] }))
}

/** The chosen looks' ids in the job's order. */
export function useChosenLooks(): readonly string[] {
  const looks = useBoard((board) => board.plan)
  const without = useStore(leftOut, ({ lookIds }) => lookIds)
  return useMemo(() => looksInOrder(looks).map(([id]) => id).filter((id) => !without.includes(id)), [looks, without])
}
