import { readFileSync } from 'node:fs'
import { describe, expect, it, vi } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture, type PictureRequest } from '../../shared-core/predict/lookPicture.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

vi.setConfig({ testTimeout: 30_000 })

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const small: PictureRequest = { width: 96, height: 144, soloLightId: null, coarse: false }

function withLook(lookId: string, change: (look: Look) => Look): Plan {
  return { ...demoPlan, looks: { ...demoPlan.looks, [lookId]: change(demoPlan.looks[lookId]!) } }
}

function withLights(lookId: string, change: (light: Look['lights'][string], id: string) => Look['lights'][string]): Plan {
  return withLook(lookId, (look) => ({
    ...look, lights: Object.fromEntries(Object.entries(look.lights).map(([id, light]) => [id, change(light, id)])),
  }))
}

/** A copy: the next drawing writes over the linear picture. */
function linearOf(picture: LookPicture, plan: Plan, lookId: string, request: Partial<PictureRequest> = {}): Float32Array {
  return Float32Array.from(picture.draw(plan, lookId, { ...small, ...request }).linear)
}

describe('light adds up', () => {
  for (const lookId of ['dusk', 'first-light']) {
    it(`the Singles of ${lookId} and the room's own light are the Frame`, () => {
      const picture = new LookPicture(asset)
      const frame = linearOf(picture, demoPlan, lookId)
      const singles = Object.keys(demoPlan.looks[lookId]!.lights).map((id) => linearOf(picture, demoPlan, lookId, { soloLightId: id }))
      const room = linearOf(picture, withLights(lookId, (light) => ({ ...light, on: false })), lookId)
      let brightest = 0
      let worst = 0
      for (let i = 0; i < frame.length; i++) {
        const sum = singles.reduce((total, single) => total + single[i]!, room[i]!)
        brightest = Math.max(brightest, frame[i]!)
        worst = Math.max(worst, Math.abs(sum - frame[i]!) / Math.max(frame[i]!, 1e-3))
      }
      expect(brightest).toBeGreaterThan(0.3)
      expect(worst).toBeLessThan(2e-6)
    })
  }

  it('twice the power is twice the light', () => {
    const single = (factor: number): Float32Array => linearOf(new LookPicture(asset),
      withLights('dusk', (light, id) => (id === 'a' ? { ...light, energyJoules: light.energyJoules * factor } : light)), 'dusk', { soloLightId: 'a' })
    // A head's colour drifts with its power by a few kelvin; its light does not.
    const [once, twice] = [single(1), single(2)]
    const sum = (picture: Float32Array): number => picture.reduce((total, value, i) => total + (i % 3 === 1 ? value : 0), 0)
    expect(sum(twice) / sum(once)).toBeCloseTo(2, 1.7)
  })

  it('a light that is off gives nothing', () => {
    const picture = new LookPicture(asset)
    const without = linearOf(picture, withLights('dusk', (light, id) => (id === 'c' ? { ...light, on: false } : light)), 'dusk')
    const frame = linearOf(picture, demoPlan, 'dusk')
    const c = linearOf(picture, demoPlan, 'dusk', { soloLightId: 'c' })
    frame.forEach((value, i) => expect(Math.abs(value - without[i]! - c[i]!)).toBeLessThan(2e-6 * Math.max(1, value)))
  })
})

describe('the same plan, the same picture', () => {
  it('byte for byte, drawn from nothing', () => {
    const [a, b] = [new LookPicture(asset), new LookPicture(asset)].map((picture) => picture.draw(demoPlan, 'dusk', small))
    expect(b!.rgba).toEqual(a!.rgba)
    expect(b!.linear).toEqual(a!.linear)
  })

  it('and by whatever way it was come to', () => {
    const wandering = new LookPicture(asset)
    const moved = withLights('dusk', (light) => ({ ...light, place: { ...light.place, xMetres: light.place.xMetres + 0.2 } }))
    const stepped = withLook('dusk', (look) => ({ ...look, camera: { ...look.camera, place: { ...look.camera.place, zMetres: 1.7 } } }))
    const coloured = withLights('dusk', (light) => ({ ...light, gelIds: ['blue'] }))
    wandering.draw(demoPlan, 'dusk', { ...small, coarse: true })
    for (const plan of [moved, stepped, coloured]) wandering.draw(plan, 'dusk', { ...small, coarse: plan !== moved })
    wandering.draw(demoPlan, 'first-light', small)
    const fresh = new LookPicture(asset).draw(demoPlan, 'dusk', small)
    expect(wandering.draw(demoPlan, 'dusk', small).rgba).toEqual(fresh.rgba)
  })

  it('a coarse one is near enough to drag by', () => {
    const full = linearOf(new LookPicture(asset), demoPlan, 'dusk')
    const coarse = linearOf(new LookPicture(asset), demoPlan, 'dusk', { coarse: true })
    const error = Math.sqrt(full.reduce((sum, value, i) => sum + (value - coarse[i]!) ** 2, 0) / full.length)
    const bright = Float32Array.from(full).sort()[Math.floor(0.99 * full.length)]!
    expect(error / bright).toBeLessThan(0.02)
    expect(error).toBeGreaterThan(0)
  })
})

describe('picture and numbers agree', () => {
  it('on the background, to a hundredth of a stop or so', () => {
    for (const lookId of ['dusk', 'first-light']) {
      const request = { ...small, width: 240, height: 360 }
      const { linear } = new LookPicture(asset).draw(demoPlan, lookId, request)
      const corners = predict(demoPlan, lookId).areas.filter(({ id }) => /^background-(top|bottom)/.test(id))
      expect(corners).toHaveLength(4)
      for (const { frameX, frameY, colour, id } of corners) {
        const at = 3 * (Math.floor(frameY * 360) * 240 + Math.floor(frameX * 240))
        colour.channels.forEach((channel, k) => expect(linear[at + k]! / channel, `${lookId} ${id}`).toBeCloseTo(1, 1.5))
      }
    }
  })
})
