import { readFileSync } from 'node:fs'
import { converter, differenceEuclidean } from 'culori'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

/** What photographers know of gelled light, seen in the linear camera channels of pictures. Common practice, no source. */

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const WIDTH = 120
const HEIGHT = 180
type Three = readonly [number, number, number]
type Leaf = readonly [path: readonly string[], set: string | number | readonly string[]]

interface Drawn {
  readonly linear: Float32Array
  readonly rgba: Uint8ClampedArray
}

function changed(lookId: string, leaves: readonly Leaf[]): Plan {
  return applyEdit(demoPlan, { name: 'test', changes: leaves.map(([path, set]) => ({ path: ['looks', lookId, ...path], set })) })
}

function drawn(plan: Plan, lookId: string, soloLightId: string | null = null): Drawn {
  return new LookPicture(asset).draw(plan, lookId, { width: WIDTH, height: HEIGHT, soloLightId, coarse: false })
}

const pixel = (frameX: number, frameY: number): number => Math.floor(frameY * HEIGHT) * WIDTH + Math.floor(frameX * WIDTH)
const linearAt = ({ linear }: Drawn, at: number): Three => [linear[3 * at]!, linear[3 * at + 1]!, linear[3 * at + 2]!]
const rgbAt = ({ rgba }: Drawn, at: number) =>
  ({ mode: 'rgb', r: rgba[4 * at]! / 255, g: rgba[4 * at + 1]! / 255, b: rgba[4 * at + 2]! / 255 }) as const
const toOklch = converter('oklch')

describe('a box right behind, pushed three stops or so', () => {
  const PUSHED_JOULES = 500
  const lit = (gelId: string, energyJoules = PUSHED_JOULES): Plan => changed('first-light', ['b', 'd'].flatMap((id): Leaf[] =>
    [[['lights', id, 'gelIds'], [gelId]], [['lights', id, 'energyJoules'], energyJoules]]))
  const corner = pixel(0.03, 0.04)

  it('goes white through a green-blue gel, while jaw and neck keep its colour', () => {
    const plan = lit('turquoise')
    const picture = drawn(plan, 'first-light')
    expect(Math.min(...linearAt(picture, corner))).toBeGreaterThan(1)
    const { areas } = predict(plan, 'first-light')
    for (const id of ['jaw-left', 'jaw-right', 'neck']) {
      const { frameX, frameY } = areas.find((area) => area.id === id)!
      const [red, green, blue] = linearAt(picture, pixel(frameX, frameY))
      expect(Math.max(red, green, blue), id).toBeLessThan(1)
      expect(green, id).toBeGreaterThan(1.5 * red)
      expect(blue, id).toBeGreaterThan(1.5 * red)
    }
  })

  it('goes from orange to yellow through an orange one at the same push, and not to white', () => {
    const clipped = (energyJoules: number) => linearAt(drawn(lit('orange', energyJoules), 'first-light'), corner).map((value) => Math.min(1, value)) as unknown as Three
    const [red, green, blue] = clipped(PUSHED_JOULES)
    expect(red).toBe(1)
    expect(green).toBeGreaterThan(clipped(PUSHED_JOULES / 8)[1])
    expect(blue).toBeLessThan(0.8)
    const hue = toOklch(rgbAt(drawn(lit('orange'), 'first-light'), corner))!.h!
    const hueBefore = toOklch(rgbAt(drawn(lit('orange', PUSHED_JOULES / 8), 'first-light'), corner))!.h!
    // Yellow lies at 110 degrees of OKLCH, orange at 70 (CSS named colours).
    expect(hue).toBeGreaterThan(hueBefore)
    expect(hue).toBeLessThan(115)
  })
})

describe('white paper lit through a gel', () => {
  /** Joules that make light D read so far over its aperture in the middle of the paper, by the incident meter. */
  function paper(gelId: string, stops: number): Plan {
    const at = (energyJoules: number) => changed('dusk', [
      [['backdrop', 'swatch'], '#f4f4f4'], [['lights', 'd', 'gelIds'], [gelId]], [['lights', 'd', 'energyJoules'], energyJoules],
    ])
    const usual = 100
    const { byLight } = predict(at(usual), 'dusk').areas.find(({ id }) => id === 'background-top-left')!
    return at(usual * 2 ** (stops - byLight.find(({ lightId }) => lightId === 'd')!.stops!))
  }
  const { frameX, frameY } = predict(demoPlan, 'dusk').areas.find(({ id }) => id === 'background-top-left')!

  for (const gelId of ['blue', 'rose', 'red', 'magenta', 'orange']) {
    it(`${gelId} is richest one to two stops under: duller a stop over, and three and a half under`, () => {
      const chroma = (stops: number) => toOklch(rgbAt(drawn(paper(gelId, stops), 'dusk'), pixel(frameX, frameY)))!.c
      const rich = Math.max(...[-2, -1.5, -1].map(chroma))
      expect(rich).toBeGreaterThan(1.1 * chroma(1))
      expect(rich).toBeGreaterThan(1.1 * chroma(-3.5))
    })
  }
})

describe('clear light on a gelled ground', () => {
  it('within two stops of it washes it; five stops under it is not seen', () => {
    /** C, clear, beside D, so far over D's reading on the paper. */
    const beside: Leaf[] = [
      [['lights', 'c', 'gelIds'], []], [['lights', 'c', 'place', 'xMetres'], 1.6], [['lights', 'c', 'place', 'yMetres'], 0.4],
      [['lights', 'c', 'aim', 'xMetres'], 0], [['lights', 'c', 'aim', 'yMetres'], 2.4], [['lights', 'c', 'aim', 'zMetres'], 1.5],
    ]
    const lightsOnly: Leaf[] = [[['lights', 'd', 'gelIds'], ['turquoise']], [['lights', 'd', 'energyJoules'], 200]]
    const withJoules = (energyJoules: number) => changed('dusk', [...beside, ...lightsOnly, [['lights', 'c', 'energyJoules'], energyJoules]])
    const area = predict(withJoules(100), 'dusk').areas.find(({ id }) => id === 'background-top-left')!
    const stopsOf = (id: string) => area.byLight.find(({ lightId }) => lightId === id)!.stops!
    const at = pixel(area.frameX, area.frameY)
    const washed = (stopsUnder: number) => drawn(withJoules(100 * 2 ** (stopsOf('d') - stopsOf('c') - stopsUnder)), 'dusk')
    const purity = (picture: Drawn) => 1 - Math.min(...linearAt(picture, at)) / Math.max(...linearAt(picture, at))
    const clean = washed(12)
    const levels = [5, 4, 2, 1, 0].map(washed)
    levels.slice(1).forEach((picture, i) => expect(purity(picture)).toBeLessThan(purity(levels[i]!)))
    // 0.02 in OKLab is just noticeable (CSS Color 4, gamut mapping).
    const seen = (picture: Drawn) => differenceEuclidean('oklab')(rgbAt(picture, at), rgbAt(clean, at))
    expect(seen(levels[0]!)).toBeLessThan(0.02)
    for (const picture of levels.slice(2)) expect(seen(picture)).toBeGreaterThan(0.02)
  })
})

describe('a coloured edge on skin', () => {
  /** Mean of the brightest places of the face in the strip's light alone. */
  function edge(skinItaDegrees: number, skinSheen: number): Three {
    const plan = changed('dusk', [
      [['subject', 'skinItaDegrees'], skinItaDegrees], [['subject', 'skinSheen'], skinSheen], [['lights', 'b', 'gelIds'], ['blue']],
    ])
    const picture = drawn(plan, 'dusk', 'b')
    const face: Three[] = []
    for (let y = Math.floor(0.28 * HEIGHT); y < 0.44 * HEIGHT; y++) {
      for (let x = Math.floor(0.35 * WIDTH); x < 0.66 * WIDTH; x++) face.push(linearAt(picture, y * WIDTH + x))
    }
    const brightest = face.sort((a, b) => b[2] - a[2]).slice(0, 30)
    return [0, 1, 2].map((k) => brightest.reduce((sum, one) => sum + one[k]!, 0) / brightest.length) as unknown as Three
  }

  it('is sheen on deep skin, more than on fair, where it is paint too', () => {
    const DEEP = -50
    const FAIR = 55
    const sheenShare = (ita: number) => 1 - edge(ita, 0)[2] / edge(ita, 1)[2]
    expect(sheenShare(DEEP)).toBeGreaterThan(0.5)
    expect(sheenShare(DEEP)).toBeGreaterThan(sheenShare(FAIR))
    // Paint is skin times light and differs with the skin; the sheen is the light itself, and does not.
    expect(edge(DEEP, 0)[2] / edge(FAIR, 0)[2]).toBeLessThan(edge(DEEP, 1)[2] / edge(FAIR, 1)[2])
  })
})
