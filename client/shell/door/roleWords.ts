import type { Role } from '../../session/board.ts'

export const roleOptions = [
  { value: 'photographer', label: 'Photographer' },
  { value: 'assistant', label: 'Assistant' },
  { value: 'client', label: 'Client' },
] as const satisfies readonly { readonly value: Role; readonly label: string }[]

/** What each role may do, for the person who hands out links. */
export const roleWords: Readonly<Record<Role, string>> = {
  photographer: 'Changes everything, hands over the pen, asks others in.',
  assistant: 'Changes the plan: lights, room and kit.',
  client: 'Looks on and points; changes the plan only while holding the pen.',
}
