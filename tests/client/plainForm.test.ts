import { describe, expect, it } from 'vitest'
import { bustFrom } from '../../client/frame/bust.ts'
import { formWeights, type FormWeights } from '../../client/frame/formWeights.ts'
import { linearFromHexes, paintForm } from '../../client/frame/paintForm.ts'
import { smoothCurve } from '../../client/frame/smoothCurve.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { changeCamera } from '../../shared-core/plan/edits/look.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'

const [lookId] = Object.keys(demoPlan.looks) as [string]
const stature = demoPlan.looks[lookId]!.subject.heightMetres
const { areas, framing } = predict(demoPlan, lookId)
const [WIDTH, HEIGHT] = [160, 240]
const form = formWeights(areas, framing, stature, WIDTH, HEIGHT)

function weightsAt(of: FormWeights, frameX: number, frameY: number): ReadonlyMap<string, number> {
  const pixel = Math.min(HEIGHT - 1, Math.floor(frameY * HEIGHT)) * WIDTH + Math.min(WIDTH - 1, Math.floor(frameX * WIDTH))
  let pair = 0
  for (let p = 0; p < pixel; p++) pair += of.counts[p]!
  return new Map(Array.from({ length: of.counts[pixel]! }, (_, i) => [areas[of.areaIndex[pair + i]!]!.id, of.weight[pair + i]!]))
}

describe('the plain form', () => {
  it('shows an area’s own colour at its own place', () => {
    for (const id of ['nose', 'lips', 'cheek-left', 'cheek-right', 'neck', 'breastbone', 'background-top-left', 'background-bottom-right']) {
      const area = areas.find((one) => one.id === id)!
      const here = weightsAt(form, area.frameX, area.frameY)
      const strongest = [...here].sort((a, b) => b[1] - a[1])[0]
      expect([id, strongest?.[0]]).toEqual([id, id])
      expect(strongest![1]).toBeGreaterThan(0.75)
    }
  })

  it('gives no pixel more than it has: weights are positive and add up to 1 or a little shade less', () => {
    let pair = 0
    const sums = Array.from(form.counts, (count) => {
      let sum = 0
      for (let i = 0; i < count; i++) sum += form.weight[pair++]!
      return sum
    })
    expect(form.weight.every((weight) => weight > 0)).toBe(true)
    expect(sums.filter((sum) => sum > 1.08 || sum < 0.45)).toEqual([])
  })

  // Head height 218 to 232 mm of 1626 to 1755 mm stature: ANSUR 1988, from memory. Face width 134-143 mm, bideltoid
  // 450-509 mm: ANSUR II, women's and men's medians. A third of slack, since this form only holds the patches.
  it('has a head and shoulders of human proportion in the Frame', () => {
    const bust = bustFrom(areas, framing, stature)!
    const headShare = (bust.chinDown - bust.crownDown) / stature
    expect(headShare).toBeGreaterThan(0.12)
    expect(headShare).toBeLessThan(0.15)
    const shoulders = (2 * bust.shoulderHalfMetres) / stature
    expect(shoulders).toBeGreaterThan((450 / 1626) * 0.8)
    expect(shoulders).toBeLessThan((509 / 1755) * 1.2)
  })

  it('follows the camera: aimed higher, the head sinks in the Frame; a longer lens makes it larger', () => {
    const bustAfter = (patch: Parameters<typeof changeCamera>[2]) => {
      const result = changeCamera(demoPlan, lookId, patch)
      if (!result.ok) throw new Error(result.message)
      const after = predict(applyEdit(demoPlan, result.edit), lookId)
      return bustFrom(after.areas, after.framing, stature)!
    }
    const now = bustFrom(areas, framing, stature)!
    expect(bustAfter({ aim: { zMetres: 1.62 } }).crownDown).toBeGreaterThan(now.crownDown + 0.05)
    const share = (bust: typeof now) => (bust.chinDown - bust.crownDown) / bust.heightMetres
    expect(share(bustAfter({ focalLengthMillimetres: 135 }))).toBeCloseTo(share(now) * (135 / 85), 1)
  })

  it('is dark where no areas of a subject are known, but still shows the background', () => {
    const background = areas.filter(({ id }) => id.startsWith('background'))
    const empty = formWeights(background, framing, stature, 8, 12)
    expect([...empty.counts].every((count) => count > 0)).toBe(true)
  })
})

describe('painting it', () => {
  const single = (hexes: readonly string[], weights: readonly number[]) => {
    const rgba = new Uint8ClampedArray(4)
    const one: FormWeights = {
      widthPixels: 1, heightPixels: 1, counts: Uint8Array.of(weights.length),
      areaIndex: Uint8Array.from(weights.keys()), weight: Float32Array.from(weights),
    }
    paintForm(one, linearFromHexes(hexes), rgba)
    return [...rgba]
  }

  // IEC 61966-2-1: half of white's light is encoded as 187.5 of 255, not as 128.
  it('mixes in light and not in code values', () => {
    const [red, , , alpha] = single(['#ffffff', '#000000'], [0.5, 0.5])
    expect(Math.abs(red! - 187.5)).toBeLessThanOrEqual(1)
    expect(alpha).toBe(255)
  })

  it('gives a colour back as it came', () => {
    const [red, green, blue] = single(['#4080c0'], [1])
    expect(Math.abs(red! - 0x40)).toBeLessThanOrEqual(1)
    expect(Math.abs(green! - 0x80)).toBeLessThanOrEqual(1)
    expect(Math.abs(blue! - 0xc0)).toBeLessThanOrEqual(1)
  })
})

// Fritsch and Carlson 1980: a monotone interpolant goes through its data and stays between neighbours.
describe('the smooth curve of its outline', () => {
  const knots = [[0, 0], [0.1, 2], [0.5, 2.5], [0.6, 7], [1, 7]] as const
  const curve = smoothCurve(knots)

  it('goes through its knots and never overshoots between them', () => {
    for (const [at, value] of knots) expect(curve(at)).toBeCloseTo(value, 12)
    for (let i = 1; i < knots.length; i++) {
      for (let step = 0; step <= 20; step++) {
        const at = knots[i - 1]![0] + ((knots[i]![0] - knots[i - 1]![0]) * step) / 20
        expect(curve(at)).toBeGreaterThanOrEqual(knots[i - 1]![1] - 1e-12)
        expect(curve(at)).toBeLessThanOrEqual(knots[i]![1] + 1e-12)
      }
    }
  })
})
