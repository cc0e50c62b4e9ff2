import type { ConnectionView, Person, Role } from './board.ts'

export interface Rights {
  readonly mayEdit: boolean
  /** Why not, in words; null when the person may. */
  readonly mayNotBecause: string | null
}

/**
 * Whether somebody may change the plan: photographer and assistant always, a client while they hold the pen, nobody whom
 * the relay has turned away. The relay decides by itself; this only keeps the screen from promising what would be refused.
 */
export function rightsOf(role: Role, people: readonly Person[], connection: ConnectionView): Rights {
  if (connection.state === 'refused' || connection.state === 'closed') return { mayEdit: false, mayNotBecause: connection.words }
  const hasPen = people.some((person) => person.isSelf && person.hasPen)
  if (role !== 'client' || hasPen) return { mayEdit: true, mayNotBecause: null }
  const holder = people.find((person) => person.hasPen && !person.isSelf)
  if (holder !== undefined) return { mayEdit: false, mayNotBecause: `${holder.name} holds the pen` }
  const photographer = people.find((person) => person.role === 'photographer')
  const who = photographer === undefined ? 'the photographer' : photographer.name
  return { mayEdit: false, mayNotBecause: `You are looking on. Ask ${who} for the pen to change the plan` }
}

/** What was kept is never changed, by anybody. */
export function rightsOver(reopened: string): Rights {
  return { mayEdit: false, mayNotBecause: `You are looking at ${reopened}. Go back to the plan to change it` }
}
