import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Light } from '../../shared-core/plan/schema/look.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { encodedFromLinear, linearFromEncoded } from '../../shared-core/spectra/srgb.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { align, type PicturePoint } from '../../shared-core/testFrame/align.ts'
import { judgeTestFrame } from '../../shared-core/testFrame/judge.ts'
import { landmarksOf } from '../../shared-core/testFrame/landmarks.ts'
import { testFrameModel } from '../../shared-core/testFrame/model.ts'
import { discColour, type Bytes } from '../../shared-core/testFrame/sample.ts'
import { seenAreas } from '../../shared-core/testFrame/seenAreas.ts'
import { randomOf } from './random.ts'
import { pictureStyle, riggedByHand } from './testFrameShots.ts'

const picture = new LookPicture(decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url))))
const [WIDTH, HEIGHT] = [160, 240]
const dusk = demoPlan.looks['dusk']!
const landmarks = landmarksOf(dusk)
const ASPECT = WIDTH / HEIGHT

function drawn(plan: typeof demoPlan): Bytes {
  return picture.draw(plan, 'dusk', { width: WIDTH, height: HEIGHT, soloLightId: null, coarse: false })
}

function withLights(plan: typeof demoPlan, changed: Readonly<Record<string, Partial<Light>>>): typeof demoPlan {
  const look = plan.looks['dusk']!
  const lights = { ...look.lights }
  for (const [id, change] of Object.entries(changed)) lights[id] = { ...look.lights[id]!, ...change }
  return { ...plan, looks: { ...plan.looks, dusk: { ...look, lights } } }
}

interface Taken { readonly photo: Bytes; readonly toPhoto: (frameX: number, frameY: number) => PicturePoint }

/** The Frame laid into a larger photograph, turned, made larger and moved; with a picture style and noise. */
function photographOf(frame: Bytes, random: () => number): Taken {
  const times = 1.6 + 0.5 * random()
  const turn = (random() - 0.5) * 0.14
  const [c, s] = [times * Math.cos(turn), times * Math.sin(turn)]
  const [width, height] = [420, 560]
  const [x0, y0] = [30 + 20 * random(), 30 + 20 * random()]
  const style = pictureStyle(0.3 * random(), 0.1 * random())
  const rgba = new Uint8ClampedArray(4 * width * height)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [dx, dy] = [x + 0.5 - x0, y + 0.5 - y0]
      const [fx, fy] = [(c * dx + s * dy) / (times * times), (-s * dx + c * dy) / (times * times)]
      if (fx < 0 || fy < 0 || fx >= WIDTH || fy >= HEIGHT) continue
      const from = 4 * (Math.floor(fy) * WIDTH + Math.floor(fx))
      for (let k = 0; k < 3; k++) {
        const linear = linearFromEncoded(frame.rgba[from + k]! / 255) * (1 + 0.06 * (random() - 0.5))
        rgba[4 * (y * width + x) + k] = 255 * encodedFromLinear(style(linear))
      }
    }
  }
  return { photo: { width, height, rgba }, toPhoto: (frameX, frameY) => ({ x: x0 + c * frameX * WIDTH - s * frameY * HEIGHT, y: y0 + s * frameX * WIDTH + c * frameY * HEIGHT }) }
}

/** As a hand puts the points: up to 0.3 pixel off, which is two on a photograph of 4000. */
const placedBy = ({ toPhoto }: Taken, random: () => number) => landmarks.map(({ frameX, frameY }) => {
  const { x, y } = toPhoto(frameX, frameY)
  return { x: x + 0.6 * (random() - 0.5), y: y + 0.6 * (random() - 0.5) }
}) as [PicturePoint, PicturePoint, PicturePoint]

describe('laying a photograph on the prediction', () => {
  const known = (frameX: number, frameY: number): PicturePoint => ({ x: 310 + 900 * (0.96 * frameX * ASPECT - 0.28 * frameY), y: -40 + 900 * (0.28 * frameX * ASPECT + 0.96 * frameY) })
  const put = () => landmarks.map(({ frameX, frameY }) => known(frameX, frameY)) as [PicturePoint, PicturePoint, PicturePoint]
  const refusal = (points: [PicturePoint, PicturePoint, PicturePoint], photoHeight = 1000) => {
    const answer = align(landmarks, ASPECT, points, photoHeight)
    return 'refused' in answer ? answer.refused : ''
  }

  it('finds a known turn, size and place from three points', () => {
    const answer = align(landmarks, ASPECT, put(), 1000)
    if ('refused' in answer) throw new Error(answer.refused)
    const { toPhoto, residualPercent, turnDegrees, pixelsPerFrameHeight } = answer.alignment
    for (const [x, y] of [[0, 0], [1, 0], [0.3, 0.8], [1, 1]] as const) {
      expect(toPhoto(x, y).x).toBeCloseTo(known(x, y).x, 6)
      expect(toPhoto(x, y).y).toBeCloseTo(known(x, y).y, 6)
    }
    expect(residualPercent).toBeLessThan(1e-9)
    // 0.96 and 0.28 are the cosine and sine of one angle: a triangle of 7, 24 and 25.
    expect(turnDegrees).toBeCloseTo((Math.atan2(7, 24) * 180) / Math.PI, 9)
    expect(pixelsPerFrameHeight).toBeCloseTo(900, 9)
  })

  it('says how far the points are off', () => {
    const [one, two, three] = put()
    const answer = align(landmarks, ASPECT, [one, { x: two.x + 6, y: two.y }, three], 1000)
    expect('alignment' in answer && answer.alignment.residualPercent).toBeGreaterThan(0.1)
  })

  it('refuses in words what cannot be this face', () => {
    const [one, two, three] = put()
    expect(refusal([one, two, two])).toContain('in a line')
    expect(refusal([one, two, { x: (one.x + two.x) / 2, y: (one.y + two.y) / 2 }])).toContain('in a line')
    expect(refusal([two, one, three])).toContain('mirrored')
    expect(refusal([one, two, { x: three.x + 0.9 * (two.x - one.x), y: three.y }])).toContain('do not lie to each other')
    expect(refusal([one, two, { x: NaN, y: 0 }])).toContain('in a line')
    const upsideDown = put().map(({ x, y }) => ({ x: -x, y: -y })) as [PicturePoint, PicturePoint, PicturePoint]
    expect(refusal(upsideDown)).toContain('upright')
    expect(refusal(put(), 5000)).toContain('far smaller')
    expect(refusal(put(), 100)).toContain('far larger')
  })

  it('has the landmarks where the picture shows them: the pupils darker than the skin beside them', () => {
    const bytes = picture.draw(demoPlan, 'dusk', { width: 480, height: 720, soloLightId: 'a', coarse: true })
    for (const { frameX, frameY } of landmarks.slice(0, 2)) {
      const [eye, brow] = [0, -0.045].map((up) => discColour(bytes, { x: frameX * 480, y: (frameY + up) * 720 }, 2)!)
      expect(eye![1]).toBeLessThan(0.5 * brow![1])
    }
  })
})

describe('the colour of a disc', () => {
  const grey = { width: 40, height: 40, rgba: new Uint8ClampedArray(4 * 40 * 40).fill(188) }

  it('is the median, so that a speck does not count, and nothing outside the picture', () => {
    const specked = { ...grey, rgba: grey.rgba.slice() }
    specked.rgba.fill(255, 4 * (20 * 40 + 18), 4 * (20 * 40 + 22))
    // Code 188 of sRGB is 0.503 of full light (IEC 61966-2-1).
    expect(discColour(specked, { x: 20, y: 20 }, 6)![0]).toBeCloseTo(0.503, 3)
    expect(discColour(grey, { x: 0, y: 0 }, 6)).toBeNull()
    expect(discColour(grey, { x: 60, y: 20 }, 6)).toBeNull()
  })
})

describe('from a photograph to the verdict', () => {
  const model = testFrameModel(demoPlan, 'dusk')
  const predicted = { ...drawn(demoPlan) }
  const { lights } = dusk
  const judged = (changed: Readonly<Record<string, Partial<Light>>>, start: number) => {
    const random = randomOf(start)
    const plan = withLights(riggedByHand(demoPlan, 'dusk', random), changed)
    const taken = photographOf(drawn(plan), random)
    const answer = align(landmarks, ASPECT, placedBy(taken, random), taken.photo.height)
    if ('refused' in answer) throw new Error(answer.refused)
    return judgeTestFrame(model, seenAreas(model, taken.photo, answer.alignment, predicted))
  }

  it.each<readonly [string, Readonly<Record<string, Partial<Light>>>, string]>([
    ['C\'s gel missing', { c: { gelIds: [] } }, 'gel-missing:c:violet'],
    ['D\'s gel missing', { d: { gelIds: [] } }, 'gel-missing:d:moss'],
    ['A a stop down', { a: { energyJoules: lights['a']!.energyJoules / 2 } }, 'power:a'],
    ['B and C with each other\'s gels', { b: { gelIds: ['violet'] }, c: { gelIds: ['apricot'] } }, 'gels-swapped:b:c'],
  ])('%s', (_, changed, key) => {
    const verdict = judged(changed, 21)
    expect(verdict.suspects[0]!.key, JSON.stringify(verdict.suspects.slice(0, 3))).toBe(key)
    expect(verdict.kind).toBe('one-thing')
  })

  it.each([31, 32, 33])('nothing wrong, photograph %i', (start) => {
    const verdict = judged({}, start)
    expect(verdict.kind, `${verdict.misfit} ${verdict.words} ${JSON.stringify(verdict.differences.map(({ id, words }) => [id, words]))}`).toBe('all-well')
  })
})
