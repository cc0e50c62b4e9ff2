import { createContext } from 'react'
import type { ReadableBoard } from './followUnhurried.ts'

/** The board as the part of the page around sees it; null where it sees the board itself. */
export const UnhurriedContext = createContext<ReadableBoard | null>(null)
