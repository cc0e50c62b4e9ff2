import { createContext, use } from 'react'
import { useStore } from 'zustand'
import type { Board } from './board.ts'
import type { BoardStore } from './boardStore.ts'

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
  return useStore(useBoardStore(), selector)
}
