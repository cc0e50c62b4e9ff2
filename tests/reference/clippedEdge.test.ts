import { describe, expect, it } from 'vitest'
import { clippedEdges, type ClippedEdges } from '../../shared-core/picture/clippedEdges.ts'
import { composeLinear, composeRoom } from '../../shared-core/picture/compose.ts'
import { develop } from '../../shared-core/picture/develop.ts'
import { edgePixels } from '../../shared-core/picture/edgePixels.ts'
import { strayLight } from '../../shared-core/picture/strayLight.ts'
import { viewOf, type View } from '../../shared-core/picture/view.ts'
import { NO_FINISH } from '../../shared-core/colour/finish.ts'
import { sightThrough } from '../../shared-core/set/camera.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import { studioScene } from '../core/studioScene.ts'
import { ballSubject } from './ballSubject.ts'
import { samplesOf } from './pictureOf.ts'

/**
 * The step edge of a textbook: where a pixel's share s lies before what is k >= 1 times clip and the rest is dark, each
 * photosite under it reads 0 or 1, and their mean (the box filter of a clipped step) is s whatever k.
 */
const WIDTH = 60
const HEIGHT = 80
const RADIUS_METRES = 0.12
const CENTRE = [0, 0, 1.5] as const
/** Four places a pixel know its share to a quarter either way, and a facet is a little short of the ball. */
const MOST_SHARE_ERROR = 0.3

const scene = studioScene({ lights: [], pieces: [] })
const samples = samplesOf(scene, ballSubject(RADIUS_METRES, CENTRE[2], 4, 48), WIDTH, HEIGHT)
const view = viewOf(scene, samples, WIDTH, HEIGHT)

/** A ball of no light before a background that is `brightness` all over. */
function picture(brightness: number, glare: number): { linear: Float32Array, edges: ClippedEdges } {
  const rows = new Float64Array(3 * (8 + view.nets.length)).fill(0)
  rows.fill(brightness, 3 * 8)
  const room = composeRoom(view)
  const linear = new Float32Array(3 * WIDTH * HEIGHT)
  composeLinear(view, [], rows, room, linear)
  return { linear, edges: clippedEdges(view, edgePixels(view), [], room, linear, strayLight(linear, WIDTH, HEIGHT, glare)) }
}

/** Red of every pixel after the clip, with no stray light. */
function clipped({ linear, edges }: ReturnType<typeof picture>): Float64Array {
  const values = Float64Array.from({ length: WIDTH * HEIGHT }, (_, pixel) => Math.min(1, linear[3 * pixel]!))
  for (let i = 0; i < edges.count; i++) values[edges.pixels[i]!] = edges.channels[3 * i]!
  return values
}

/** Share of each pixel that the true ball covers, by 16 x 16 lines of sight. */
function coverage(): Float64Array {
  const { view: camera } = builtSet(scene)
  const to = CENTRE.map((value, k) => value - camera.place[k]!)
  const square = to.reduce((sum, value) => sum + value * value, 0) - RADIUS_METRES * RADIUS_METRES
  return Float64Array.from({ length: WIDTH * HEIGHT }, (_, pixel) => {
    const [x, y] = [pixel % WIDTH, Math.floor(pixel / WIDTH)]
    let met = 0
    for (let k = 0; k < 256; k++) {
      const sight = sightThrough(camera, (x + ((k % 16) + 0.5) / 16) / WIDTH, (y + (Math.floor(k / 16) + 0.5) / 16) / HEIGHT)
      const along = sight.reduce((sum, value, axis) => sum + value * to[axis]!, 0)
      if (along * along > square) met++
    }
    return met / 256
  })
}

const covered = coverage()
const sum = (values: Float64Array): number => values.reduce((all, value) => all + value, 0)

describe('an edge against what is past clip', () => {
  it.each([1.01, 2, 16, 400])('is as wide as the thing, however bright the white behind it: %s times clip', (brightness) => {
    const values = clipped(picture(brightness, 0))
    values.forEach((value, pixel) => expect(Math.abs(value - (1 - covered[pixel]!))).toBeLessThan(MOST_SHARE_ERROR))
    // Errors of single pixels go both ways: the dark area is the ball's own.
    expect(Math.abs(sum(values.map((value) => 1 - value)) / sum(covered) - 1)).toBeLessThan(0.01)
  })

  it('would be eaten by the white if the mean were clipped', () => {
    const { linear } = picture(16, 0)
    const dark = sum(Float64Array.from({ length: WIDTH * HEIGHT }, (_, pixel) => 1 - Math.min(1, linear[3 * pixel]!)))
    expect(dark / sum(covered)).toBeLessThan(0.97)
  })

  it('half a pixel of 1, 2, 16 or 400 times clip and half of black are one half', () => {
    for (const brightness of [1, 2, 16, 400]) {
      for (const half of [[0, 1], [0, 2], [1, 2]] as const) {
        const { linear, edges } = onePixel(half, brightness)
        expect(linear[0]).toBeCloseTo(brightness / 2, 4)
        const value = edges.count === 1 ? edges.channels[0]! : Math.min(1, linear[0]!)
        expect(value).toBeCloseTo(0.5, 6)
      }
    }
  })

  it('the lens puts its stray light on each photosite, and all under the clip', () => {
    const { linear, edges } = picture(16, 0.002)
    const stray = strayLight(linear, WIDTH, HEIGHT, 0.002)
    const most = Math.max(...stray.levels)
    const least = Math.min(...stray.levels)
    expect(edges.count).toBeGreaterThan(30)
    for (let i = 0; i < edges.count; i++) {
      // White quarters stay 1; dark ones are lifted by the veil that lies on them.
      const value = edges.channels[3 * i]!
      const white = Math.floor(4 * value + 1e-6)
      expect(value - white / 4).toBeGreaterThan(((4 - white) / 4) * least - 1e-6)
      expect(value - white / 4).toBeLessThan(((4 - white) / 4) * most + 1e-6)
    }
  })

  it('nothing past clip leaves every pixel as it is', () => {
    const { linear, edges } = picture(0.9, 0.02)
    expect(edges.count).toBe(0)
    const how = { whiteBalanceKelvin: 5200, veilingGlare: 0.02, finish: NO_FINISH, space: 'srgb' } as const
    const [plain, apart] = [new Uint8ClampedArray(4 * WIDTH * HEIGHT), new Uint8ClampedArray(4 * WIDTH * HEIGHT)]
    develop(linear, WIDTH, HEIGHT, how, plain)
    develop(linear, WIDTH, HEIGHT, how, apart, strayLight(linear, WIDTH, HEIGHT, 0.02), edges)
    expect(apart).toEqual(plain)
  })

  it('is developed in place of the clipped mean, and nothing else is', () => {
    const { linear, edges } = picture(16, 0)
    const how = { whiteBalanceKelvin: 5200, veilingGlare: 0, finish: NO_FINISH, space: 'srgb' } as const
    const [plain, apart] = [new Uint8ClampedArray(4 * WIDTH * HEIGHT), new Uint8ClampedArray(4 * WIDTH * HEIGHT)]
    develop(linear, WIDTH, HEIGHT, how, plain)
    develop(linear, WIDTH, HEIGHT, how, apart, strayLight(linear, WIDTH, HEIGHT, 0), edges)
    const changed = new Set(edges.pixels.subarray(0, edges.count))
    for (let pixel = 0; pixel < WIDTH * HEIGHT; pixel++) {
      expect(apart[4 * pixel]! < plain[4 * pixel]!, `pixel ${pixel}`).toBe(changed.has(pixel))
    }
  })
})

/** One pixel of the ball's view, two of its four places before a background of some brightness. */
function onePixel(places: readonly [number, number], brightness: number): { linear: Float32Array, edges: ClippedEdges } {
  const ground = view.ground.pointGrounds[0]!
  const dark = [0, 1, 2, 3].filter((k) => !places.includes(k))
  const one: View = {
    ...view, width: 1, height: 1,
    samples: {
      ...samples, count: 2, kinds: Uint8Array.of(2), pixels: new Uint32Array(2), quarters: Uint8Array.from(dark),
      corners: samples.corners.slice(0, 6), weights: new Float32Array(6).fill(0.25 / 3),
      eyes: { ...samples.eyes, count: 0 },
    },
    ground: {
      ...view.ground, runs: new Int32Array(0), pointCount: 2, pointPixels: new Uint32Array(2), pointQuarters: Uint8Array.from(places),
      pointGrounds: new Int16Array(2).fill(ground), pointX: view.ground.pointX.slice(0, 2), pointY: view.ground.pointY.slice(0, 2),
    },
  }
  const rows = new Float64Array(3 * (8 + view.nets.length)).fill(0)
  rows.fill(brightness, 3 * 8)
  const room = composeRoom(one)
  const linear = new Float32Array(3)
  composeLinear(one, [], rows, room, linear)
  return { linear, edges: clippedEdges(one, edgePixels(one), [], room, linear, strayLight(linear, 1, 1, 0)) }
}
