import { describe, expect, it } from 'vitest'
import { distanceAt, eyeballOf } from '../../shared-core/subject/field/subjectField.ts'
import { cranium } from '../../shared-core/subject/field/skull.ts'

/**
 * ANSUR II (US Army 2012, public files), medians of women and men, in mm; the subject is midway between them.
 * Chin to crown is from ANSUR 1988, from memory.
 */
const medians = {
  headBreadth: [147, 154], headLength: [190, 200], bizygomatic: [134, 143], mentonSellion: [113, 123],
  interpupillary: [62, 64], neckCircumference: [328, 395], bideltoid: [450, 509], tragionToTop: [127, 131],
  chinToCrown: [218, 232],
} as const

type Field = (x: number, y: number, z: number) => number
/** Where a ray from far outside first meets the field, in mm, along the axis it travels. */
function meet(field: Field, from: readonly [number, number, number], axis: 0 | 1 | 2): number {
  const at: [number, number, number] = [from[0], from[1], from[2]]
  const way = from[axis] > 0 ? -1 : 1
  for (let round = 0; round < 5000; round++) {
    const d = field(...at)
    if (d < 0.02) return at[axis]
    if (Math.abs(at[axis] - from[axis]) > 900) break
    at[axis] += way * Math.max(0.02, d * 0.6)
  }
  throw new Error('The ray missed.')
}
const subject: Field = (x, y, z) => distanceAt(x / 1000, y / 1000, (z + 1620) / 1000) * 1000
const scalp: Field = (x, y, z) => cranium(Math.abs(x), y, z)
const largest = (values: number[]): number => Math.max(...values)
const range = (from: number, to: number, step: number): number[] => {
  const out: number[] = []
  for (let v = from; v <= to; v += step) out.push(v)
  return out
}

function near(value: number, pair: readonly [number, number], share: number): void {
  const wanted = (pair[0] + pair[1]) / 2
  expect(Math.abs(value - wanted)).toBeLessThan(wanted * share)
}

/** The lowest point of the chin: the steepest fall of the middle line below the lips. */
function menton(): number {
  return range(-122, -104, 0.5).find((z) => meet(subject, [0, -300, z], 1) < -75) ?? NaN
}

describe('the subject against the medians of ANSUR II', () => {
  it('has a head of middling breadth and length under the hair', () => {
    near(2 * largest(range(-20, 50, 5).flatMap((y) => range(10, 70, 5).map((z) => meet(scalp, [300, y, z], 0)))), medians.headBreadth, 0.03)
    const back = largest(range(-10, 60, 5).map((z) => meet(scalp, [0, 300, z], 1)))
    const glabella = -meet(subject, [0, -300, 15], 1)
    near(back + glabella, medians.headLength, 0.04)
  })
  it('has a middling face', () => {
    const widest = largest(range(-60, -14, 2).flatMap((y) => range(-34, -8, 2).map((z) => meet(subject, [300, y, z], 0))))
    near(2 * widest, medians.bizygomatic, 0.04)
    // Sellion: the deepest point of the root of the nose.
    const root = range(-8, 14, 0.5).map((z) => ({ z, depth: meet(subject, [0, -300, z], 1) }))
    const sellion = root.reduce((a, b) => (b.depth > a.depth ? b : a)).z
    near(sellion - menton(), medians.mentonSellion, 0.06)
    near((eyeballOf(1).centre[0] - eyeballOf(-1).centre[0]) * 1000, medians.interpupillary, 0.02)
  })
  it('stands as high as it should', () => {
    const crown = largest(range(-40, 40, 5).map((y) => meet(scalp, [0, y, 300], 2)))
    near(crown - menton(), medians.chinToCrown, 0.04)
    // The tragion lies over the origin, at the height of the middle of the ear.
    near(crown - -12, medians.tragionToTop, 0.05)
    // Eye height standing: stature less eye to vertex, 114 for men and 109 for women.
    expect(Math.abs(1620 - (1740 - 111.5))).toBeLessThan(1740 * 0.01)
  })
  it('has a middling neck and shoulders', () => {
    // Around the column of the neck below the larynx, square to it: it leans forward by about 19 degrees.
    const slice = (x: number, y: number): number => subject(x, 14 + y, -135 + 0.35 * y)
    let girth = 0
    let before: [number, number] | undefined
    for (const degrees of range(0, 360, 4)) {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]
      let r = 130
      for (let round = 0; round < 400 && slice(r * c, r * s) > 0.02; round++) r -= Math.max(0.02, 0.6 * slice(r * c, r * s))
      const here: [number, number] = [r * c, r * s]
      if (before) girth += Math.hypot(here[0] - before[0], here[1] - before[1], 0.35 * (here[1] - before[1]))
      before = here
    }
    near(girth, medians.neckCircumference, 0.07)
    near(2 * largest(range(-320, -220, 10).map((z) => meet(subject, [400, 18, z], 0))), medians.bideltoid, 0.05)
    // Acromial height over stature: 1439 of 1755 and 1332 of 1626; the acromion lies half the biacromial breadth out.
    const acromion = 1620 + largest(range(0, 40, 5).map((y) => meet(subject, [190, y, 200], 2)))
    expect(Math.abs(acromion / 1740 - (1439 / 1755 + 1332 / 1626) / 2)).toBeLessThan(0.01)
  })
})
