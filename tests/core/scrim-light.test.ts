import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Light, Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import type { AreaPrediction } from '../../shared-core/predict/prediction.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { ScenePiece } from '../../shared-core/set/scene.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { strayCurve } from '../../shared-core/transport/strayCurve.ts'
import { aLight, aPiece, at, studioScene } from './studioScene.ts'

/**
 * What lands on a cloth is returned, passed or kept: the returned and the passed are never more than the landed (energy;
 * ISO 80000-7: reflectance, transmittance and absorptance of a body add up to 1).
 */

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const LOOK = 'first-light'
const SPOT = 'background-top-left'
const CLOTH_Y = 0.75
const look = demoPlan.looks[LOOK]!
const key = look.lights['a']!
const black = '#000000'

/** One light before the cloth and one behind it, each the other's mirror image, in a black room. */
function mirrored(swatch: string, transmittance: number, ambientLux = 0): Plan {
  const away = 0.6
  const at = (side: -1 | 1): Light => ({
    ...key, gelIds: [], place: { xMetres: -0.7, yMetres: CLOTH_Y + side * away, zMetres: 2.3 },
    aim: { xMetres: -0.6, yMetres: CLOTH_Y, zMetres: 2 },
  })
  const changed: Look = {
    ...look, lights: { front: at(-1), behind: at(1) }, backdrop: { ...look.backdrop, swatch: black },
    pieces: { scrim: { ...look.pieces['scrim']!, front: swatch, back: swatch, transmittance, widthMetres: 3, heightMetres: 3 } },
  }
  const surfaces = Object.fromEntries(Object.keys(demoPlan.room.surfaces).map((name) => [name, black])) as typeof demoPlan.room.surfaces
  return { ...demoPlan, room: { ...demoPlan.room, surfaces, ambientLux }, looks: { ...demoPlan.looks, [LOOK]: changed } }
}

const spotOf = (plan: Plan): AreaPrediction => predict(plan, LOOK).areas.find(({ id }) => id === SPOT)!
const fromLight = (plan: Plan, lightId: string) => spotOf(plan).byLight.find((given) => given.lightId === lightId)!.channels

/** The share that `#ffffff` returns: no swatch is whiter. */
const WHITEST = 0.98

describe('a scrim', () => {
  const solid = fromLight(mirrored('#ffffff', 0), 'front')

  for (const transmittance of [0.1, 0.4, 0.9]) {
    it(`that passes ${transmittance} returns and passes no more than it receives, and all of that where it is white`, () => {
      const plan = mirrored('#ffffff', transmittance)
      const returned = fromLight(plan, 'front')
      const passed = fromLight(plan, 'behind')
      solid.forEach((channel, k) => {
        const received = channel / WHITEST
        expect(returned[k]! + passed[k]!).toBeLessThanOrEqual(1.001 * received)
        expect(returned[k]! + passed[k]!).toBeGreaterThan(WHITEST * 0.999 * received)
        expect(passed[k]! / received).toBeCloseTo(transmittance, 2)
      })
    })
  }

  it('of a grey cloth returns its grey of what it does not pass', () => {
    const grey = fromLight(mirrored('#808080', 0), 'front')
    fromLight(mirrored('#808080', 0.4), 'front').forEach((channel, k) => expect(channel / grey[k]!).toBeCloseTo(0.6, 2))
  })

  it('in the room\'s steady light, from both sides, is as bright as a white board at the most', () => {
    const dark = (plan: Plan): Plan => ({ ...plan, looks: { ...plan.looks, [LOOK]: { ...plan.looks[LOOK]!, lights: {} } } })
    const board = spotOf(dark(mirrored('#ffffff', 0, 400))).colour.channels
    const cloth = spotOf(dark(mirrored('#ffffff', 0.4, 400))).colour.channels
    board.forEach((channel, k) => {
      expect(cloth[k]!).toBeLessThanOrEqual(1.001 * (channel / WHITEST))
      expect(cloth[k]!).toBeGreaterThan(0.999 * channel)
    })
  })
})

describe('a scrim in the picture is what the numbers say', () => {
  const WIDTH = 120
  const HEIGHT = 180
  const scenes: readonly (readonly [string, Plan])[] = [
    ['lit from both sides, by the room too', mirrored('#cfd8e0', 0.4, 400)], ['of the demo job', demoPlan],
  ]
  for (const [name, plan] of scenes) {
    it(name, () => {
      const picture = new LookPicture(asset)
      const area = spotOf(plan)
      const shown = (soloLightId: string | null) => {
        const { linear } = picture.draw(plan, LOOK, { width: WIDTH, height: HEIGHT, soloLightId, coarse: false })
        const pixel = Math.floor(area.frameY * HEIGHT) * WIDTH + Math.floor(area.frameX * WIDTH)
        return linear.slice(3 * pixel, 3 * pixel + 3)
      }
      const all = shown(null)
      expect(Math.min(...all)).toBeGreaterThan(0)
      // The picture draws between the nodes of a net, a few in a hundred off where a near light's pool is steep.
      area.colour.channels.forEach((channel, k) => expect(Math.abs(channel / all[k]! - 1)).toBeLessThan(0.03))
      for (const { lightId, channels } of area.byLight) {
        const alone = shown(lightId)
        channels.forEach((channel, k) => expect(Math.abs(channel - alone[k]!), `${lightId} channel ${k}`).toBeLessThan(0.03 * all[k]!))
      }
    })
  }
})

describe('a cloth that lets everything through', () => {
  it('is as good as absent to the light that wanders in the room (energy; integrating sphere)', () => {
    const away = aLight('x', { place: at(0, 0, 1.5), aim: at(0, 5, 1.5) })
    const cloth = aPiece('s', {
      kind: 'scrim', place: at(0, -2, 1.6), facingDegrees: 0, widthMetres: 2.4, heightMetres: 2.4, front: black, back: black, transmittance: 1,
    })
    // Exposure of a wall by stray light: the wandering flux over all area that it lands on.
    const wandering = (pieces: readonly ScenePiece[]): number => {
      const scene = studioScene({ lights: [away], pieces })
      return strayCurve(scene, 'x')![30]! / builtSet(scene).surfaceAreaSquareMetres
    }
    // The cloth is itself landed on and left once more: a few percent of the room's area.
    expect(wandering([cloth]) / wandering([])).toBeGreaterThan(0.99)
    expect(wandering([cloth]) / wandering([])).toBeLessThan(1.06)
  })
})
