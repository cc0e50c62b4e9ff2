import { timesFromStops } from '../../arithmetic/portable.ts'

const FULL_ENERGY_JOULES = 1_000

/** Power of every light of the demo job, in stops from the full 1000 J of its head: what is solved for is kept apart. */
const stopsFromFull = {
  duskDraft1: { a: -4.1, b: -3, c: -1.3, d: -5.4 },
  dusk: { a: -4.1, b: -2.5, c: -1.8, d: -5.4 },
  firstLight: { a: -4.1, b: -5.8, d: -5.8 },
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
