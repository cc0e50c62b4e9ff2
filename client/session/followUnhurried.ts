import type { Board } from './board.ts'
import { pageClock, type Clock } from './latestOnly.ts'

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
  /** The hand has moved, and its own part of the page is about to be drawn: a turn taken now is drawn with it. */
  handMoved(): void
}

/** As many parts of the page draw anew while a hand moves something: one every so many milliseconds. */
const TURN_MS = 24
/** While moves come, turns wait so long for the next, rather than be drawn by themselves. */
const NEXT_MOVE_MS = 60

export function takingTurns(clock: Clock = pageClock): Turns {
  const waiting: (() => void)[] = []
  let isAsked = false
  let turnMs = 0
  let moveMs = Number.NEGATIVE_INFINITY

  function dueMs(): number {
    const isMoving = clock.nowMs() - moveMs < NEXT_MOVE_MS
    return isMoving ? Math.max(moveMs, turnMs) + NEXT_MOVE_MS : turnMs + TURN_MS
  }

  function ask(): void {
    if (isAsked || waiting.length === 0) return
    isAsked = true
    clock.after(Math.max(TURN_MS, dueMs() - clock.nowMs()), () => {
      isAsked = false
      if (clock.nowMs() >= dueMs()) next()
      ask()
    })
  }

  function next(): void {
    turnMs = clock.nowMs()
    waiting.shift()?.()
  }

  return {
    wait(go) {
      // The move that made it wait is drawn by itself.
      if (waiting.length === 0) turnMs = clock.nowMs()
      waiting.push(go)
      ask()
    },
    handMoved() {
      moveMs = clock.nowMs()
      if (moveMs >= turnMs + TURN_MS && waiting.length > 0) next()
    },
  }
}

/** One for the page: two parts never draw anew in the same breath. */
export const turnsOfPage = takingTurns()

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

  function changed(now: Board, before: Board): void {
    if (!onlyHandMoved(seen, now) || isUnderHand()) return see()
    if (!isWaiting) {
      isWaiting = true
      turns.wait(() => {
        isWaiting = false
        see()
      })
    }
    // Numbers cost a move enough: a turn goes with one that has none.
    if (now.shown !== before.shown && now.prediction === before.prediction) turns.handMoved()
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
