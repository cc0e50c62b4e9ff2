import { describe, expect, it } from 'vitest'
import type { Emitter } from '../../shared-core/set/emitter.ts'
import { panelsOf } from '../../shared-core/set/panels.ts'
import { paperPanel } from '../../shared-core/set/room.ts'
import type { Scene, SceneLight } from '../../shared-core/set/scene.ts'
import { type Ellipsoid, subjectForm } from '../../shared-core/set/subjectForm.ts'
import { emittersOf } from '../../shared-core/set/emitter.ts'
import { lightAtPoint } from '../../shared-core/transport/lightAtPoint.ts'
import { aLight, aPiece, at, emptyScene, face, portraitLights, studioScene } from '../core/studioScene.ts'
import { type PlainFront, type PlainPlate, bruteForce } from './bruteForce.ts'

/** Where the light's own model is only stated, not checked, here: lobes and grids have checks of their own. */
const LOBE: Partial<Record<SceneLight['modifier']['kind'], number>> = { 'beauty-dish': 1.5, reflector: 3.819, 'umbrella-white': 0.3 }

function fabricPass({ kind, openingDegrees }: SceneLight['grid'], cosine: number): number {
  if (kind === 'none') return 1
  // Square cells averaged round the axis: 1 - 4s/pi + s^2/pi, by quadrature beyond s = 1.
  const half = 2 - Math.sqrt(4 - Math.PI / 2)
  const s = (half * Math.tan(Math.acos(cosine))) / Math.tan((openingDegrees * Math.PI) / 360)
  let sum = 0
  const turns = 64
  for (let k = 0; k < turns; k++) {
    const turn = ((k + 0.5) / turns) * (Math.PI / 2)
    sum += (Math.max(0, 1 - s * Math.cos(turn)) * Math.max(0, 1 - s * Math.sin(turn))) / turns
  }
  return 0.8 * (0.02 + 0.98 * sum)
}

function tabulated(pass: (cosine: number) => number): (cosine: number) => number {
  const table = Array.from({ length: 4001 }, (_, i) => pass(Math.max(1e-4, i / 4000)))
  return (cosine) => table[Math.round(cosine * 4000)]!
}

function plainFront(emitter: Emitter, light: SceneLight): PlainFront {
  const { widthMetres, heightMetres, shape } = emitter.front
  const halfWidth = widthMetres / 2
  const halfHeight = shape === 'rectangle' ? heightMetres / 2 : halfWidth
  const area = {
    rectangle: 4 * halfWidth * halfHeight,
    octagon: 8 * Math.tan(Math.PI / 8) * halfWidth ** 2,
    disc: Math.PI * halfWidth ** 2,
    sphere: 0,
  }[shape]
  const corner = halfWidth * Math.SQRT2
  const holds = {
    rectangle: () => true,
    octagon: (u: number, v: number) => Math.abs(u) + Math.abs(v) <= corner,
    disc: (u: number, v: number) => u * u + v * v <= halfWidth * halfWidth,
    sphere: () => false,
  }[shape]
  const isBack = emitter.axis !== emittersOf(light)[0]!.axis && emitter.front.fluxShare !== emittersOf(light)[0]!.front.fluxShare
  const n = isBack ? 0 : LOBE[light.modifier.kind] ?? 0
  const pass = tabulated((cosine) => (isBack ? 1 : fabricPass(light.grid, cosine)))
  const axial = ((n + 2) / (2 * Math.PI)) * (emitter.front.fluxShare / area)
  return {
    centre: emitter.centre, axis: emitter.axis, across: emitter.across, up: emitter.up, holds, halfWidth, halfHeight,
    radiance: (cosine) => axial * cosine ** n * pass(cosine),
  }
}

function platesOf(scene: Scene, ownLightId: string): PlainPlate[] {
  const paper = paperPanel(scene.backdrop)
  const panels = [...scene.pieces.flatMap(panelsOf), ...(paper ? [paper] : [])].map((panel): PlainPlate => ({
    centre: panel.centre, normal: panel.normal, across: panel.across, up: panel.up,
    halfWidth: panel.halfWidthMetres, halfHeight: panel.halfHeightMetres, round: false,
  }))
  const fronts = scene.lights.filter(({ id }) => id !== ownLightId).map((light): PlainPlate => {
    const { centre, axis, across, up, front } = emittersOf(light)[0]!
    return {
      centre, normal: axis, across, up, halfWidth: front.widthMetres / 2, halfHeight: front.heightMetres / 2,
      round: front.shape !== 'rectangle',
    }
  })
  return [...panels, ...fronts]
}

/** Ways out of a rounded part, in its own axes. */
const WAYS = [
  [0, -1, 0], [0.7, -0.7, 0.14], [-0.7, -0.7, 0.14], [1, 0, 0], [-1, 0, 0], [0.8, 0.6, 0], [-0.8, 0.6, 0],
  [0.3, -0.3, 0.9], [0, -0.8, -0.6],
] as const

/** Places a little outside the body all round, each facing straight out of the part it belongs to. */
function placesRound(parts: readonly Ellipsoid[]): { name: string; place: Three; facing: Three }[] {
  const combine = (part: Ellipsoid, weights: readonly number[]) =>
    [0, 1, 2].map((k) => part.axes.reduce((sum, axis, i) => sum + axis[k]! * weights[i]!, 0)) as unknown as Three
  const outside = (place: Three, part: Ellipsoid) => Math.hypot(...part.axes.map((axis, i) =>
    [0, 1, 2].reduce((sum, k) => sum + axis[k]! * (place[k]! - part.centre[k]!), 0) / part.semiAxesMetres[i]!))
  return parts.filter(({ part }) => ['cranium', 'face', 'neck', 'shoulders', 'torso'].includes(part)).flatMap((part) =>
    WAYS.flatMap((way) => {
      const size = Math.hypot(...way)
      const unit = way.map((c) => c / size)
      const reach = combine(part, unit.map((c, i) => 1.1 * c * part.semiAxesMetres[i]!))
      const place = part.centre.map((c, k) => c + reach[k]!) as unknown as Three
      const normal = combine(part, unit.map((c, i) => c / part.semiAxesMetres[i]!))
      const long = Math.hypot(...normal)
      const facing = normal.map((c) => c / long) as unknown as Three
      const isFree = parts.every((other) => outside(place, other) > 1.03)
      return isFree ? [{ name: `${part.part} ${way.join()}`, place, facing }] : []
    }))
}

type Three = readonly [number, number, number]

const box = (id: string, width: number, height: number, changes: Partial<SceneLight>) => aLight(id, {
  modifier: { kind: 'softbox', widthMetres: width, heightMetres: height, depthMetres: 0.4, diffusers: 2 }, ...changes,
})
const dish = { kind: 'beauty-dish', widthMetres: 0.55, heightMetres: 0.55, depthMetres: 0.2, diffusers: 0 } as const

const scenes: Record<string, Scene> = {
  'a portrait with key, edge behind a flag, shade and ground': studioScene({
    pieces: [aPiece('flag', {
      kind: 'flag', place: at(0.8, 0.45, 1.6), facingDegrees: -60, widthMetres: 0.45, heightMetres: 0.6,
    })],
  }),
  'boxes right behind the head': studioScene({
    lights: [
      box('wide', 1.8, 1.8, { place: at(0, 0.5, 1.5), aim: at(0, -2, 1.5) }),
      box('near', 1.2, 0.9, { place: at(0.3, 0.35, 1.5), aim: at(0, -2, 1.5) }),
    ],
  }),
  'a turned head, light from the side, above, below and close': studioScene({
    lights: [
      box('side', 1.2, 0.9, { place: at(-1, 0.2, 1.5), aim: face }),
      box('above', 1.2, 0.9, { place: at(0, -0.5, 2.5), aim: face }),
      box('below', 1.2, 0.9, { place: at(0.4, -0.7, 0.9), aim: face }),
      aLight('close', { place: at(-0.9, -0.3, 1.4), aim: at(0, 0, 1.3), modifier: dish }),
    ],
    subject: { ...studioScene().subject, turnDegrees: 20, headTurnDegrees: -40, headTiltDegrees: 10 },
  }),
  'a V-flat and a board around': studioScene({
    lights: [box('key', 0.9, 1.2, { place: at(-1.2, -1, 1.9), aim: face })],
    pieces: [
      aPiece('v', {
        kind: 'v-flat', place: at(-0.75, -0.2, 1.2), facingDegrees: 60, openDegrees: 80, widthMetres: 0.5, heightMetres: 2.4,
      }),
      aPiece('b', { place: at(-0.2, -0.7, 1.2), facingDegrees: 0, widthMetres: 0.5, heightMetres: 0.6 }),
    ],
  }),
}

describe('blocked light against a dense count with textbook ray tests', () => {
  it.each(Object.entries(scenes))('%s', (_, scene) => {
    const form = subjectForm(scene.subject)
    let compared = 0
    let blocked = 0
    for (const light of scene.lights) {
      const plates = platesOf(scene, light.id)
      for (const { name: placeName, place: from, facing } of placesRound(form.parts)) {
        // A receiver stands a millimetre out from its place.
        const place = from.map((c, i) => c + facing[i]! * 0.001) as unknown as Three
        const expected = { flat: 0, domeOut: 0 }
        const open = { flat: 0, domeOut: 0 }
        for (const emitter of emittersOf(light)) {
          const front = plainFront(emitter, light)
          const dense = bruteForce(front, place, facing, form.parts, plates, 200)
          const clear = bruteForce(front, place, facing, [], [], 60)
          expected.flat += dense.flat
          expected.domeOut += dense.domeOut
          open.flat += clear.flat
          open.domeOut += clear.domeOut
        }
        const found = lightAtPoint(scene, light.id, { place: from, facing, surfaceId: null }).direct
        for (const key of ['flat', 'domeOut'] as const) {
          const name = `${light.id} ${placeName} ${key}`
          // Deep in a shadow, three stops and more down, an error counts by what would come unblocked.
          expect(Math.abs(found[key] - expected[key]), name).toBeLessThan(0.008 * open[key] + 1e-7)
          if (expected[key] < 1e-6 || expected[key] < 0.125 * open[key]) continue
          compared++
          if (expected[key] < 0.9 * open[key]) blocked++
          expect(Math.abs(found[key] / expected[key] - 1), name).toBeLessThan(0.02)
        }
      }
    }
    expect(compared).toBeGreaterThan(10)
    expect(blocked).toBeGreaterThan(3)
  }, 60_000)
})

describe('unblocked light against a dense count', () => {
  const fabric = { kind: 'fabric', openingDegrees: 50 } as const
  const lights: readonly SceneLight[] = [
    box('box', 0.9, 1.2, { place: at(-0.8, -0.8, 2), aim: at(0, 0, 1.5) }),
    box('gridded strip', 0.35, 1.4, { place: at(0.9, 0.5, 1.7), aim: at(0, 0, 1.5), grid: fabric, rollDegrees: 20 }),
    aLight('gridded octa', { place: at(0.3, -0.7, 1.9), aim: at(0, 0, 1.5), grid: fabric }),
    aLight('dish', { place: at(0.5, -0.4, 1.9), aim: at(0, 0, 1.5), modifier: dish }),
    aLight('reflector', {
      place: at(1.2, -1, 1.5), aim: at(0.2, 0, 1.5), modifier: { ...dish, kind: 'reflector', widthMetres: 0.18 },
    }),
    aLight('white umbrella', {
      place: at(-1.2, -1.2, 2.2), aim: at(0, 0, 1.5), modifier: { ...dish, kind: 'umbrella-white', widthMetres: 1.65 },
    }),
    portraitLights[2]!,
  ]
  const facings = [[0, -1, 0], [0.6, -0.8, 0], [-0.6, 0, 0.8], [0.48, -0.6, 0.64]] as const

  it.each(lights.map((light) => [light.id, light] as const))('%s', (_, light) => {
    const scene = emptyScene([light])
    let seen = 0
    let most = 0
    for (const facing of facings) {
      const expected = { flat: 0, domeOut: 0 }
      for (const emitter of emittersOf(light)) {
        const dense = bruteForce(plainFront(emitter, light), [0, 0, 1.5], facing, [], [], 400)
        expected.flat += dense.flat
        expected.domeOut += dense.domeOut
      }
      const place = [-facing[0] * 0.001, -facing[1] * 0.001, 1.5 - facing[2] * 0.001] as const
      const found = lightAtPoint(scene, light.id, { place, facing, surfaceId: null }).direct
      for (const key of ['flat', 'domeOut'] as const) {
        most = Math.max(most, expected[key])
        // A sliver over the horizon, five stops under what the front gives elsewhere, is left to the horizon's own check.
        if (expected[key] <= most / 32) continue
        seen++
        expect(Math.abs(found[key] / expected[key] - 1), `${facing.join()} ${key}`).toBeLessThan(0.005)
      }
    }
    expect(seen).toBeGreaterThan(4)
  }, 30_000)
})
