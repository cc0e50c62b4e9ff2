import type { SetChange } from './rigged.ts'

export type MoveKind =
  | 'working-light-on' | 'working-light-off' | 'marks' | 'camera' | 'backdrop'
  | 'power-down' | 'undress' | 'refit' | 'place' | 'power' | 'build' | 'strike'
  | 'piece-up' | 'piece-away' | 'piece-moved'

/** One piece of work at one stand, of one person or of both. */
export interface Move {
  /** Stays the same while the plan says the same of the same stand. Letters, digits, - _ and dots. */
  readonly id: string
  readonly kind: MoveKind
  /** The letter, or the label, of what is worked on. */
  readonly name: string
  /** The light or piece as the set has it now, or as it will be called where it is new. */
  readonly thing: string
  /** What is done, one thing each. */
  readonly words: readonly string[]
  readonly minutes: number
  readonly people: 1 | 2
  /** The usual care at this very move. */
  readonly cautions: readonly string[]
  readonly change: SetChange
}

/** `after` may begin once `before` is done and this long has passed. */
export interface Dependency {
  readonly before: string
  readonly after: string
  readonly lagMinutes: number
  readonly why: string
}
