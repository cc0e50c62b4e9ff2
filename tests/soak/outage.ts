import { wireCut } from '../postgres/wireCut.ts'
import { letIn, pause, until } from './kills.ts'
import { relaysOnDatabase } from './victims.ts'

export interface OutageFigures {
  readonly edits: number
  /** Until everybody had been told in words. */
  readonly toldMs: number
  /** From the database's return until everybody had all that was done meanwhile. */
  readonly landedMs: number
}

/**
 * Eight people edit over two relays whose database goes away for so long. Nobody is sent away, everybody is told, and
 * all that was done meanwhile lands after.
 *
 * @throws Error naming what did not come true
 */
export async function loseDatabase(databaseUrl: string, seconds: number): Promise<OutageFigures> {
  const wire = await wireCut(databaseUrl)
  const victim = await relaysOnDatabase(databaseUrl, { DATABASE_URL: wire.url })
  const { people } = await letIn(victim.origin)
  try {
    await until(() => people.every((person) => person.isIn), 'everybody is in')
    people.forEach((person) => person.type(100))
    await pause(1_000)
    let sentAway = 0
    people.forEach(({ provider }) => provider.on('connection-close', () => { sentAway += 1 }))
    const cutMs = performance.now()
    wire.cut()
    await until(() => people.every(({ provider }) => [...provider.awareness.getStates().values()].some(isToldOfDatabase)), 'everybody is told')
    const toldMs = performance.now() - cutMs
    await pause(seconds * 1_000 - toldMs)
    if (sentAway > 0) throw new Error(`${sentAway} connections were ended meanwhile`)
    wire.mend()
    const mendedMs = performance.now()
    people.forEach((person) => person.rest())
    const edits = people.reduce((total, person) => total + person.made, 0)
    await until(() => people.every(({ doc }) => doc.getMap('edits').size === edits), 'everybody has every edit')
    return { edits, toldMs, landedMs: performance.now() - mendedMs }
  } finally {
    people.forEach((person) => person.leave())
    await victim.close()
    wire.close()
  }
}

function isToldOfDatabase(state: { readonly [field: string]: unknown }): boolean {
  const { notKept } = (state.relay ?? {}) as { notKept?: unknown }
  return typeof notKept === 'string' && /database .* cannot be reached/.test(notKept)
}
