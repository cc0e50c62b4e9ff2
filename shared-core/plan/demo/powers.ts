import { timesFromStops } from '../../arithmetic/portable.ts'

const FULL_ENERGY_JOULES = 1_000

/**
 * Power of every light of the demo job, in stops from the full 1000 J of its head: the head's nearest tenth to what the
 * light is wanted at, by the prediction itself (tests/core/demo-powers.test.ts holds them to it). The scrim's two lights
 * stand a quarter stop past the point where the worst corner of the frame turns white; crossed reflectors spill much of
 * their light past the cloth, so they need some two stops more than heads whose whole pool met it would.
 */
const stopsFromFull = {
  duskDraft1: { a: -3.9, b: -2.5, c: -1.7, d: -5.6 },
  dusk: { a: -3.9, b: -2, c: -2.2, d: -5.6 },
  firstLight: { a: -3.9, b: -3.2, d: -3.2 },
} as const

type LookPowers<Name extends keyof typeof stopsFromFull> = { readonly [Light in keyof (typeof stopsFromFull)[Name]]: number }

/** The same in joules. */
export const powers = {
  duskDraft1: joulesOf('duskDraft1'),
  dusk: joulesOf('dusk'),
  firstLight: joulesOf('firstLight'),
}

function joulesOf<Name extends keyof typeof stopsFromFull>(name: Name): LookPowers<Name> {
  const entries = Object.entries(stopsFromFull[name] as Record<string, number>)
  return Object.fromEntries(
    entries.map(([light, stops]) => [light, FULL_ENERGY_JOULES * timesFromStops(stops)]),
  ) as LookPowers<Name>
}
