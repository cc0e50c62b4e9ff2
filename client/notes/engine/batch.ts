import type { NotesCommand } from '../../../shared-core/notes/command.ts'
import { NOTES_LIMITS } from '../../../shared-core/notes/limits.ts'

/** Well under what a relay takes in one request, and quick over a slow network. */
const MOST_CHARACTERS = 250_000

/**
 * What goes to the relay next, in order. A lock goes alone: the relay draws its pictures first, and what was written
 * before it should not wait for those.
 */
export function nextBatch(waiting: readonly NotesCommand[], most: number = NOTES_LIMITS.commandsPerBatch): readonly NotesCommand[] {
  if (waiting[0]?.do === 'lock.make') return waiting.slice(0, 1)
  const batch: NotesCommand[] = []
  let characters = 0
  for (const command of waiting.slice(0, most)) {
    characters += JSON.stringify(command).length
    if (batch.length > 0 && (command.do === 'lock.make' || characters > MOST_CHARACTERS)) break
    batch.push(command)
  }
  return batch
}
