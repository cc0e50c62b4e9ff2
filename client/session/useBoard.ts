import { createContext, use, useEffect, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Board } from './board.ts'
import type { BoardStore } from './boardStore.ts'
import { followUnhurried } from './followUnhurried.ts'
import { UnhurriedContext } from './unhurriedContext.ts'

/** The board that the page is showing. */
export const BoardContext = createContext<BoardStore | null>(null)

/** The store itself, for handlers that need the latest state without drawing it. Throws outside a board. */
export function useBoardStore(): BoardStore {
  const store = use(BoardContext)
  if (store === null) throw new Error('useBoard is for components inside an open board')
  return store
}

/**
 * What a component draws of the board; it draws again only when that part changes. Select single fields: a selector
 * that makes a new object each time would draw for ever (wrap such a one in zustand's `useShallow`).
 */
export function useBoard<Part>(selector: (board: Board) => Part): Part {
  const store = useBoardStore()
  return useStore(use(UnhurriedContext) ?? store, selector)
}

/** As `useBoard`, but keeping up with a hand wherever it is: for what costs little to draw, and is looked at meanwhile. */
export function useBoardAtOnce<Part>(selector: (board: Board) => Part): Part {
  return useStore(useBoardStore(), selector)
}

/** As `useBoard`, but following a hand a few times a second: for what costs much to draw, in a part that keeps up with it. */
export function useBoardUnhurried<Part>(selector: (board: Board) => Part): Part {
  const store = useBoardStore()
  const followed = useMemo(() => followUnhurried(store, () => false), [store])
  useEffect(() => followed.follow(), [followed])
  return useStore(followed, selector)
}
