import { namedAreas, type Look } from '../../shared-core/plan/schema/look.ts'
import type { Selection } from '../session/board.ts'

const parts = ['camera', 'subject', 'backdrop', 'room', 'kit'] as const

/** What to pick when a snag or caution is pressed: the first of the things it names that is in the look. */
export function selectionAbout(about: readonly string[], look: Look): Selection | null {
  for (const id of about) {
    if (Object.hasOwn(look.lights, id)) return { kind: 'light', id }
    if (Object.hasOwn(look.pieces, id)) return { kind: 'piece', id }
    if (Object.hasOwn(look.points, id)) return { kind: 'point', id }
    const part = parts.find((one) => one === id)
    if (part) return { kind: part }
    if ((namedAreas as readonly string[]).includes(id)) return { kind: 'area', id }
  }
  return null
}
