import fc from 'fast-check'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Light, Look, Piece } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

const base = demoPlan.looks['dusk']!
const usual = base.lights['a']!

const place = fc.record({
  xMetres: fc.constantFrom(-1.5, -0.5, 0, 0.75, 1.75), yMetres: fc.constantFrom(-1.5, -0.25, 1, 1.75), zMetres: fc.constantFrom(0.5, 1.5, 2.25),
})

const light: fc.Arbitrary<Omit<Light, 'letter'>> = fc.record({
  headId: fc.constantFrom('head-1000', 'head-1000', 'old-head-1000'),
  modifierId: fc.constantFrom('octa-100', 'strip-35x140', 'reflector-65'),
  grid: fc.constantFrom<Light['grid']>({ kind: 'none', openingDegrees: 40 }, { kind: 'fabric', openingDegrees: 50 }),
  place, aim: place,
  energyJoules: fc.constantFrom(62.5, 125, 500),
  gelIds: fc.constantFrom<string[]>([], ['violet'], ['moss']),
  gelPlace: fc.constantFrom<Light['gelPlace']>('at-the-head', 'over-the-front'),
  support: fc.constantFrom<Light['support']>('stand', 'stand', 'low-stand', 'boom'),
  circuitId: fc.constantFrom('left', 'right'),
  plane: fc.constantFrom<Light['plane']>('front', 'edge', 'background'),
}).map((own) => ({ ...usual, ...own }))

const piece: fc.Arbitrary<Piece> = fc.record({
  kind: fc.constantFrom<Piece['kind']>('flag', 'board', 'scrim'), place, facingDegrees: fc.constantFrom(0, 90), widthMetres: fc.constantFrom(0.6, 1.8),
}).map((own) => ({ ...base.pieces['flag-b']!, ...own, label: `${own.kind} ${own.widthMetres}` }))

/** Letters as a look has them: each once. A light that is off is there, too. */
const look: fc.Arbitrary<Look> = fc.record({
  lights: fc.uniqueArray(fc.tuple(fc.constantFrom('A', 'B', 'C', 'D', 'E'), light, fc.integer({ min: 0, max: 4 })), { maxLength: 4, selector: ([letter]) => letter }),
  pieces: fc.uniqueArray(fc.tuple(fc.constantFrom('p', 'q', 'r'), piece), { maxLength: 2, selector: ([id]) => id }),
  fNumber: fc.constantFrom(8, 8, 11), backdropY: fc.constantFrom(2.4, 2.4, 2.4, 2.8), markY: fc.constantFrom(0, 0, 0, 0.3),
}).map(({ lights, pieces, fNumber, backdropY, markY }) => ({
  ...base,
  camera: { ...base.camera, fNumber },
  backdrop: { ...base.backdrop, yMetres: backdropY },
  subject: { ...base.subject, yMetres: markY },
  lights: Object.fromEntries(lights.map(([letter, own, off]) => [letter.toLowerCase(), { ...own, letter, on: off > 0 }])),
  pieces: Object.fromEntries(pieces),
}))

/** A plan with two looks, `x` and `y`: often with lights in common, as two looks of a day have. */
export const planOfTwoLooks: fc.Arbitrary<Plan> = fc.tuple(look, look, fc.subarray(['a', 'b', 'c', 'd', 'e'])).map(([x, y, common]) => ({
  ...demoPlan,
  looks: { x, y: { ...y, lights: { ...y.lights, ...Object.fromEntries(common.filter((id) => id in x.lights).map((id) => [id, x.lights[id]!])) } } },
}))
