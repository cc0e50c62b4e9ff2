import { commandSchema, type NotesCommand } from '../../../shared-core/notes/command.ts'
import { newId } from '../../../shared-core/plan/newId.ts'

type WithoutOwn<Command> = Command extends NotesCommand ? Omit<Command, 'id' | 'planHashSeen'> : never

/** A command as a screen says it; the engine gives it its id, and the hash of the plan that was before the person's eyes. */
export type NotesDraft = WithoutOwn<NotesCommand>

/** The command of a draft; null when it does not hold together (an empty or overlong text, say). */
export function commandOf(draft: NotesDraft): NotesCommand | null {
  const seen = draft.do === 'that-one' || draft.do === 'lock.make' ? { planHashSeen: null } : {}
  const parsed = commandSchema.safeParse({ ...draft, id: newId(), ...seen })
  return parsed.success ? parsed.data : null
}
