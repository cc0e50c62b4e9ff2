import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { spotWeights, stopsOverGrey } from '../../shared-core/picture/spotReading.ts'
import { strayAlongRow, strayLight } from '../../shared-core/picture/strayLight.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture, type Picture, type PictureRequest } from '../../shared-core/predict/lookPicture.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const WIDTH = 60
const HEIGHT = 90
const asked: PictureRequest = { width: WIDTH, height: HEIGHT, soloLightId: null, coarse: false }

function drawn(plan: Plan, lookId: string, request: Partial<PictureRequest> = {}, by = new LookPicture(asset)): Picture {
  const picture = by.draw(plan, lookId, { ...asked, ...request })
  // The drawer writes over its linear picture at the next draw.
  return { ...picture, linear: Float32Array.from(picture.linear) }
}

function changed(plan: Plan, lookId: string, path: readonly string[], set: string | number | boolean | readonly string[]): Plan {
  return applyEdit(plan, { name: 'test', changes: [{ path: ['looks', lookId, ...path], set }] })
}

const at = ({ linear, width }: Picture, x: number, y: number): readonly number[] => [...linear.slice(3 * (y * width + x), 3 * (y * width + x) + 3)]

/** The darkest place with the lens's stray light on it and nothing clipped, in stops over a spot meter's mid-grey. */
function darkestStops(plan: Plan, veilingGlare: number): number {
  const { linear } = drawn(plan, 'first-light')
  const stray = strayLight(linear, WIDTH, HEIGHT, veilingGlare)
  const row = new Float64Array(3 * stray.columns)
  const weights = spotWeights(plan.looks['first-light']!.camera)
  let least = Infinity
  for (let y = 0; y < HEIGHT; y++) {
    strayAlongRow(stray, y, HEIGHT, row)
    for (let x = 0; x < WIDTH; x++) {
      const at = 3 * (y * WIDTH + x)
      const veil = 3 * Math.floor(((x + 0.5) * stray.columns) / WIDTH)
      least = Math.min(least, stopsOverGrey(weights, linear[at]! + row[veil]!, linear[at + 1]! + row[veil + 1]!, linear[at + 2]! + row[veil + 2]!))
    }
  }
  return least
}

describe('the predicted picture', () => {
  it('is the sum of its Singles in linear light', () => {
    for (const lookId of Object.keys(demoPlan.looks)) {
      const whole = drawn(demoPlan, lookId)
      const sum = new Float64Array(whole.linear.length)
      for (const lightId of Object.keys(demoPlan.looks[lookId]!.lights)) {
        drawn(demoPlan, lookId, { soloLightId: lightId }).linear.forEach((value, i) => { sum[i] = sum[i]! + value })
      }
      // The demo's room is dark, so lights are all there is; 32-bit sums agree to a few parts in a million.
      whole.linear.forEach((value, i) => expect(Math.abs(value - sum[i]!)).toBeLessThan(1e-5 * Math.max(1, value)))
    }
  })

  it('is the same bytes however it was come to', () => {
    const remembering = new LookPicture(asset)
    const moved = changed(changed(demoPlan, 'dusk', ['lights', 'a', 'place', 'xMetres'], -1.1), 'dusk', ['lights', 'c', 'energyJoules'], 90)
    for (const plan of [demoPlan, moved, demoPlan]) {
      expect(drawn(plan, 'dusk', {}, remembering).rgba).toEqual(drawn(plan, 'dusk').rgba)
    }
  })

  it('twice the power of one light is twice its own picture', () => {
    const energy = demoPlan.looks['dusk']!.lights['b']!.energyJoules
    const once = drawn(demoPlan, 'dusk', { soloLightId: 'b' })
    const twice = drawn(changed(demoPlan, 'dusk', ['lights', 'b', 'energyJoules'], 2 * energy), 'dusk', { soloLightId: 'b' })
    // The head grows some kelvin warmer from one power to the next: under a percent in any channel.
    once.linear.forEach((value, i) => expect(Math.abs(twice.linear[i]! - 2 * value)).toBeLessThan(0.02 * value + 1e-6))
  })
})

describe('trade facts in the picture (common practice, no source)', () => {
  const lit = (gelId: string) => ['b', 'd'].reduce((plan, id) => changed(plan, 'first-light', ['lights', id, 'gelIds'], [gelId]), demoPlan)
  const corner = (picture: Picture) => at(picture, 2, 3)

  it('a pale green box behind goes white while its colour still wraps; orange at the same push does not go white', () => {
    const pistachio = drawn(lit('pistachio'), 'first-light')
    expect(Math.min(...corner(pistachio))).toBeGreaterThanOrEqual(1)
    const orangeId = Object.keys(demoPlan.gels).find((id) => id.includes('orange'))!
    const [red, green, blue] = corner(drawn(lit(orangeId), 'first-light'))
    expect(red!).toBeGreaterThan(1)
    expect(blue!).toBeLessThan(0.5)
    expect(red!).toBeGreaterThan(green!)
  })

  it('a brighter box hazes black: the darkest place of the Frame comes nearer to mid-grey, by the lens more than by light', () => {
    const { veilingGlare } = demoPlan.looks['first-light']!.camera
    const bright = changed(demoPlan, 'first-light', ['subject', 'hair'], '#050505')
    const dim = ['b', 'd'].reduce((plan, id) => changed(plan, 'first-light', ['lights', id, 'energyJoules'], 8), bright)
    expect(darkestStops(bright, veilingGlare)).toBeGreaterThan(darkestStops(dim, veilingGlare) + 1)
    // A stop: over half of what is left of black there is stray light.
    expect(darkestStops(bright, veilingGlare)).toBeGreaterThan(darkestStops(bright, 0) + 1)
  })

  it('on deep skin coloured light shows by its sheen: dewy skin takes more of the edge than matt', () => {
    const deep = changed(demoPlan, 'dusk', ['subject', 'skinItaDegrees'], -50)
    const edge = (sheen: number) => drawn(changed(deep, 'dusk', ['subject', 'skinSheen'], sheen), 'dusk', { soloLightId: 'b' }).linear
      .reduce((most, value) => Math.max(most, value), 0)
    expect(edge(1)).toBeGreaterThan(edge(0))
  })
})
