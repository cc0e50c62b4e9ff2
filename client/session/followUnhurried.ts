import type { Board } from './board.ts'

/** The part of the board's store that drawing needs. */
export interface ReadableBoard {
  getState(): Board
  getInitialState(): Board
  subscribe(listener: (board: Board, before: Board) => void): () => void
}

/** Lets in turn whoever waits go on, one each time. */
export interface Turns {
  /** Calls once, when it is that one's turn. */
  wait(go: () => void): void
}

/** As many parts of the page as draw anew while a hand moves something: one every so many milliseconds. */
const TURN_MS = 24

/** @param after calls back in so many milliseconds */
export function takingTurns(after: (delayMs: number, run: () => void) => void = (delayMs, run) => void setTimeout(run, delayMs)): Turns {
  const waiting: (() => void)[] = []
  let isAsked = false
  const ask = () => {
    isAsked = waiting.length > 0
    if (isAsked) after(TURN_MS, next)
  }
  const next = () => {
    const go = waiting.shift()
    ask()
    go?.()
  }
  return {
    wait(go) {
      waiting.push(go)
      if (!isAsked) ask()
    },
  }
}

/** One for the page: two parts never draw anew in the same breath. */
const turnsOfPage = takingTurns()

/**
 * The board as somebody sees it who is not what the hand is on. While something is in a hand, what follows from it is
 * passed on in turns, so that the hand itself is never kept waiting; all else, and everything once the hand rests, at once.
 * @param isUnderHand whether the hand is on the very part that follows, which then sees all at once
 */
export function followUnhurried(store: ReadableBoard, isUnderHand: () => boolean, turns: Turns = turnsOfPage): ReadableBoard & { follow(): () => void } {
  const listeners = new Set<(board: Board, before: Board) => void>()
  let seen = store.getState()
  let isWaiting = false

  function see(): void {
    const before = seen
    seen = store.getState()
    if (seen !== before) for (const listener of listeners) listener(seen, before)
  }

  function changed(): void {
    if (!onlyHandMoved(seen, store.getState()) || isUnderHand()) return see()
    if (isWaiting) return
    isWaiting = true
    turns.wait(() => {
      isWaiting = false
      see()
    })
  }

  return {
    getState: () => seen,
    getInitialState: () => store.getInitialState(),
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    follow() {
      see()
      return store.subscribe(changed)
    },
  }
}

/** What changes of itself while something is in a hand: the plan under it, what is predicted of that, where others are. */
const MOVES_WITH_HAND: ReadonlySet<keyof Board> = new Set<keyof Board>(['shown', 'prediction', 'people'])

function onlyHandMoved(before: Board, now: Board): boolean {
  if (now.shown === now.plan) return false
  return (Object.keys(now) as (keyof Board)[]).every((key) => MOVES_WITH_HAND.has(key) || before[key] === now[key])
}
