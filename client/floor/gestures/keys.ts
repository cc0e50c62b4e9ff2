/** What a key means while something is selected on the Floor. */
export type KeyMeaning =
  | { readonly kind: 'move'; readonly du: number; readonly dv: number }
  | { readonly kind: 'turn'; readonly degrees: number }
  | { readonly kind: 'remove' | 'duplicate' }

export interface KeyPress {
  readonly key: string
  readonly shiftKey: boolean
  readonly altKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
}

/** A centimetre, ten with Shift; a degree, ten with Shift. */
const STEP_METRES = 0.01
const STEP_DEGREES = 1
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1],
}

/** The meaning of a key press, in the drawing's own right and down; null when it is not for the Floor. */
export function meaningOf(press: KeyPress): KeyMeaning | null {
  if (press.ctrlKey || press.metaKey) return null
  const times = press.shiftKey ? 10 : 1
  const arrow = ARROWS[press.key]
  if (arrow !== undefined) {
    const [right, down] = arrow
    if (!press.altKey) return { kind: 'move', du: right * STEP_METRES * times, dv: down * STEP_METRES * times }
    return { kind: 'turn', degrees: (right !== 0 ? right : down) * STEP_DEGREES * times }
  }
  if (press.altKey) return null
  if (press.key === 'Delete' || press.key === 'Backspace') return { kind: 'remove' }
  // With Shift, since bare letters pick lights all over the board.
  if (press.shiftKey && press.key.toLowerCase() === 'd') return { kind: 'duplicate' }
  return null
}

/** Whether letting go of this key ends a run of steps. */
export function endsSteps(key: string): boolean {
  return key in ARROWS
}
