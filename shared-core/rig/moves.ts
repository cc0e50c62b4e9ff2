import { z } from 'zod'
import { idText } from '../plan/schema/quantities.ts'
import { writtenBySchema } from './written.ts'

/** One move of a look change, done. What it said is kept: a plan that has moved since asks for something else at the same stand. */
export const moveTickSchema = z.strictObject({
  fromId: idText,
  toId: idText,
  said: z.string().max(2_000),
  by: writtenBySchema,
})
export type MoveTick = Readonly<z.infer<typeof moveTickSchema>>

/** A tick's key: the same move is made again whenever the day comes back to a look. */
export function moveTickKey(fromId: string, toId: string, moveId: string): string {
  return `${fromId}.${toId}.${moveId}`
}
