/** What a key does on the board. One table: the page listens by it and the list of keys is drawn from it. */
export type Shortcut =
  | { readonly does: 'undo' | 'redo' | 'save' | 'list' | 'all-lights' | 'before' | 'pencil' | 'notes' | 'details' | 'ask' | 'let-go' | 'next-look' | 'previous-look' }
  | { readonly does: 'light'; readonly letter: string }

export interface KeyPress {
  readonly key: string
  readonly command: boolean
  readonly shift: boolean
  readonly alt: boolean
}

export const shortcutList: readonly { readonly keys: readonly string[]; readonly words: string }[] = [
  { keys: ['A', '…', 'Z'], words: 'Pick the light with that letter; hold the key to see it alone' },
  { keys: ['Space'], words: 'All lights again' },
  { keys: [','], words: 'Held: the Frame as it was before your last change, or as you kept it' },
  { keys: ['←', '↑', '→', '↓'], words: 'On the Frame: the next area that way, and what it reads; with Shift the reading moves off it' },
  { keys: ['↑', '↓'], words: 'In a number: a tenth of a stop or the usual step; with Shift a third, with Alt a whole' },
  { keys: ['←', '↑', '→', '↓'], words: 'On the Floor: move what is picked by 1 cm, with Shift by 10 cm; with Alt turn it' },
  { keys: ['Shift', 'D'], words: 'On the Floor: duplicate what is picked' },
  { keys: ['Delete'], words: 'On the Floor: remove what is picked' },
  { keys: ['N'], words: 'Pencil: press the Frame, a light, an area, a gel or the Floor to pin a note; arrow keys and Enter do it on the Frame' },
  { keys: ['Shift', 'N'], words: 'Notes: the list; ↑ ↓ go through it, Enter reads, ← → go on from note to note' },
  { keys: ['/'], words: 'Ask: say what you want of the look' },
  { keys: ['↑', '↓'], words: 'On an area of the Stop Ladder: the level wanted, by its head’s step, with Shift a third; ← → go to the next' },
  { keys: ['[', ']'], words: 'Previous and next look' },
  { keys: ['Enter'], words: 'Details of what is picked' },
  { keys: ['Esc'], words: 'Put the details away, then let go; in a number, put the old one back' },
  { keys: ['Ctrl or ⌘', 'Z'], words: 'Undo your own last change; with Shift, redo' },
  { keys: ['Ctrl or ⌘', 'S'], words: 'Save the job file' },
  { keys: ['?'], words: 'This list' },
]

/** The shortcut a key press stands for; null for all others. */
export function shortcutOf({ key, command, shift, alt }: KeyPress): Shortcut | null {
  const lower = key.toLowerCase()
  if (command) {
    if (alt) return null
    if (lower === 'z') return { does: shift ? 'redo' : 'undo' }
    if (lower === 'y' && !shift) return { does: 'redo' }
    return lower === 's' && !shift ? { does: 'save' } : null
  }
  if (alt) return null
  if (key === '?') return { does: 'list' }
  // With shift on many keyboards.
  if (key === '/') return { does: 'ask' }
  if (shift) return lower === 'n' ? { does: 'notes' } : null
  if (key === ' ') return { does: 'all-lights' }
  if (key === ',') return { does: 'before' }
  if (key === 'Enter') return { does: 'details' }
  if (key === 'Escape') return { does: 'let-go' }
  if (key === ']') return { does: 'next-look' }
  if (key === '[') return { does: 'previous-look' }
  if (lower === 'n') return { does: 'pencil' }
  return /^[a-z]$/.test(lower) ? { does: 'light', letter: lower.toUpperCase() } : null
}
