import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { LookPicture, type PictureRequest } from '../../shared-core/predict/lookPicture.ts'
import { WhoLights } from '../../shared-core/predict/whoLights.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const asked: PictureRequest = { width: 60, height: 90, soloLightId: null, coarse: false }
const places = [[30, 40], [22, 70], [38, 60], [3, 4], [56, 86]] as const

/** Light adds up (superposition of incoherent light): the parts of a pixel are the pixel. */
describe('who lights a pixel', () => {
  const lit = applyEdit(demoPlan, { name: 'test', changes: [{ path: ['room', 'ambientLux'], set: 500 }] })

  it('is all of it, the room included', () => {
    const picture = new LookPicture(asset)
    const linear = Float32Array.from(picture.draw(lit, 'dusk', asked).linear)
    for (const [x, y] of places) {
      const parts = new WhoLights().at(picture.parts(lit, 'dusk', asked), x, y)
      expect(parts.at(-1)).toMatchObject({ lightId: null })
      expect(parts.at(-1)!.share).toBeGreaterThan(0)
      expect(parts.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
      for (let k = 0; k < 3; k++) {
        const whole = linear[3 * (y * asked.width + x) + k]!
        expect(Math.abs(parts.reduce((sum, { channels }) => sum + channels[k]!, 0) - whole)).toBeLessThan(1e-5 * Math.max(whole, 0.01))
      }
    }
  })

  it('leaves the picture that was drawn as it was', () => {
    const picture = new LookPicture(asset)
    const { linear } = picture.draw(demoPlan, 'dusk', asked)
    const before = Float32Array.from(linear)
    new WhoLights().at(picture.parts(demoPlan, 'dusk', asked), 30, 40)
    expect(linear).toEqual(before)
  })

  it('is one light where one is seen alone', () => {
    const picture = new LookPicture(asset)
    const solo = { ...asked, soloLightId: 'c' }
    const parts = new WhoLights().at(picture.parts(demoPlan, 'dusk', solo), 30, 40)
    expect(parts.map(({ lightId, share }) => [lightId, share])).toEqual([['c', 1]])
  })
})
