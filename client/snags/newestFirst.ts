import type { Severity, Snag } from '../../shared-core/predict/snag.ts'

/** Which snags have been on this screen, and in which round each came up: a later round is newer. */
export interface SeenSnags {
  readonly lookId: string
  readonly snags: readonly Snag[]
  readonly round: number
  readonly rounds: ReadonlyMap<string, number>
}

/** A look just opened: all of its snags are equally new. */
export function seenAtFirst(lookId: string, snags: readonly Snag[]): SeenSnags {
  return { lookId, snags, round: 0, rounds: new Map(snags.map(({ key }) => [key, 0])) }
}

/** The same after the next prediction. What went quiet is forgotten: should it come back, it is new. */
export function seenNext(before: SeenSnags, lookId: string, snags: readonly Snag[]): SeenSnags {
  if (before.lookId !== lookId) return seenAtFirst(lookId, snags)
  const round = before.round + 1
  return { lookId, snags, round, rounds: new Map(snags.map(({ key }) => [key, before.rounds.get(key) ?? round])) }
}

const loudness: Readonly<Record<Severity, number>> = { stop: 0, look: 1, note: 2 }

/** Loudest first; among the equally loud the newest, and among those of one age the worst, as the checks sort them. */
export function newestFirst({ snags, rounds }: SeenSnags): readonly Snag[] {
  return [...snags].sort((a, b) =>
    loudness[a.severity] - loudness[b.severity] || (rounds.get(b.key) ?? 0) - (rounds.get(a.key) ?? 0))
}
