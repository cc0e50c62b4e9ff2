import { z } from 'zod'

/** Why the relay did not do what a command asks, with the sentence for the person. */
export const COMMAND_PROBLEMS = {
  'bad-command': 'The relay does not know this kind of note. Reload the page.',
  'id-taken': 'Another note has this number already. Write it again.',
  'only-photographer': 'Only the photographer can do that.',
  'only-author': 'Only the one who made it can do that.',
  'not-yours-to-close': 'Only the one who wrote the note, the photographer or the assistant can change its state.',
  'no-such-note': 'That note is not there.',
  'no-such-stroke': 'That drawn line is not there.',
  'no-such-look': 'That look is no longer in the plan.',
  'no-such-ballot': 'That vote is not there.',
  'not-on-ballot': 'That look does not stand for this vote.',
  'votes-open': 'The votes are open already; none can be added or changed.',
  'no-such-that-one': 'That moment is not there.',
  'no-such-lock': 'That lock is not there.',
  'superseded': 'That lock was superseded by a later one. Look at the later one.',
  'no-such-check': 'That screen check is not there, or not yours.',
  'no-such-picture': 'That picture is not kept here. Send it first.',
  'plan-moved': 'The plan has changed since you looked, or your last change has not arrived yet. Look again, then lock.',
  'no-plan': 'There is no plan to keep yet.',
  'picture-failed': 'The relay could not draw the picture of this look, so it is not locked. Try again.',
  'too-many': 'This job holds as many of these as the relay keeps.',
  'too-fast': 'Too many at once. The rest goes in a moment.',
  'not-kept': 'The relay cannot keep anything at the moment. It will be sent again.',
} as const

export type CommandProblem = keyof typeof COMMAND_PROBLEMS
const problemCodes = Object.keys(COMMAND_PROBLEMS) as [CommandProblem, ...CommandProblem[]]

/** Those after which the same command may be sent again as it is; all others are final. */
export const PASSING_PROBLEMS: ReadonlySet<CommandProblem> = new Set<CommandProblem>(['too-fast', 'not-kept', 'picture-failed'])

/** The relay's answer to one command. */
export const commandAnswerSchema = z.discriminatedUnion('ok', [
  z.object({ id: z.string(), ok: z.literal(true) }),
  z.object({ id: z.string(), ok: z.literal(false), code: z.enum(problemCodes), message: z.string() }),
])
export type CommandAnswer = z.infer<typeof commandAnswerSchema>

export const commandAnswersSchema = z.object({ answers: z.array(commandAnswerSchema) })
