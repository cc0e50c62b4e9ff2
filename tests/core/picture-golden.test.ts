import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { decode, encode } from 'fast-png'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { pictureDifference, writeDifferenceMap, type PictureDifference } from './pictureDifference.ts'

/**
 * Small pictures of the demo looks as they were when somebody last looked at them and found them right. They are our
 * own earlier output and prove nothing about light: that is for the checks against closed forms and traced rays. They
 * only keep a change from moving the picture unseen. When one is meant to, look at the new pictures and keep them with
 *
 *   GOLDEN=write npx vitest run --config tests/vitest.config.ts --project core tests/core/picture-golden.test.ts
 */
const GOLDEN = new URL('../golden/', import.meta.url)
const isWriting = process.env['GOLDEN'] === 'write'
const WIDTH = 60
const HEIGHT = 90

/**
 * Half a level on the mean: what is left when half of the bytes round the other way. A changed rule of points on a front
 * errs to both sides and stays under it; light that is lost, gained or moved does not.
 */
const MOST_MEAN_LEVELS = 0.5
/** At a rim a pixel may fall to the other side by rounding; a Frame this small has its rims in some dozens of bytes. */
const FAR_LEVELS = 8
const MOST_FAR_SHARE = 0.005

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))

function drawn(plan: Plan, lookId: string): Uint8ClampedArray {
  return new LookPicture(asset).draw(plan, lookId, { width: WIDTH, height: HEIGHT, soloLightId: null, coarse: false }).rgba
}

function kept(lookId: string): ArrayLike<number> {
  const file = new URL(`${lookId}.png`, GOLDEN)
  if (!existsSync(file)) throw new Error(`No golden picture of ${lookId} is kept; the head of this file says how to make it`)
  return decode(readFileSync(file)).data
}

const isSame = ({ meanLevels, farShare }: PictureDifference): boolean => meanLevels <= MOST_MEAN_LEVELS && farShare <= MOST_FAR_SHARE

describe('golden pictures', () => {
  for (const lookId of Object.keys(demoPlan.looks)) {
    it(`${lookId} looks as it did`, () => {
      const now = drawn(demoPlan, lookId)
      if (isWriting) writeFileSync(new URL(`${lookId}.png`, GOLDEN), encode({ width: WIDTH, height: HEIGHT, data: now, channels: 4, depth: 8 }))
      const then = kept(lookId)
      const difference = pictureDifference(now, then, FAR_LEVELS)
      const where = isSame(difference) ? '' : writeDifferenceMap(now, then, WIDTH, HEIGHT, lookId)
      const { meanLevels, farShare } = difference
      expect(isSame(difference), `${meanLevels.toFixed(2)} levels off on the mean, ${(100 * farShare).toFixed(2)} % far off; where, eightfold: ${where}`).toBe(true)
    })
  }

  it('would notice a key a tenth of a stop brighter, a strip 20 cm further out and another gel', () => {
    const changes = [
      { path: ['lights', 'a', 'energyJoules'], set: demoPlan.looks['dusk']!.lights['a']!.energyJoules * 2 ** (1 / 10) },
      { path: ['lights', 'b', 'place', 'xMetres'], set: demoPlan.looks['dusk']!.lights['b']!.place.xMetres + 0.2 },
      { path: ['lights', 'd', 'gelIds'], set: ['pistachio'] },
    ]
    for (const { path, set } of changes) {
      const other = applyEdit(demoPlan, { name: 'test', changes: [{ path: ['looks', 'dusk', ...path], set }] })
      expect(isSame(pictureDifference(drawn(other, 'dusk'), kept('dusk'), FAR_LEVELS)), path.join('/')).toBe(false)
    }
  })
})
