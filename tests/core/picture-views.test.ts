import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { drawLeaders, leaderTints } from '../../shared-core/picture/leaderView.ts'
import { regionsOf } from '../../shared-core/picture/regions.ts'
import { luminanceWeights, weighed } from '../../shared-core/picture/spotReading.ts'
import { drawClipping } from '../../shared-core/picture/views.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { LookPicture, type PictureRequest } from '../../shared-core/predict/lookPicture.ts'
import { WhoLights } from '../../shared-core/predict/whoLights.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const asked: PictureRequest = { width: 60, height: 90, soloLightId: null, coarse: false }

describe('who lights what, all over the picture', () => {
  const picture = new LookPicture(asset)
  const linear = Float32Array.from(picture.draw(demoPlan, 'dusk', asked).linear)
  const parts = picture.parts(demoPlan, 'dusk', asked)
  const planes = new WhoLights().everywhere(parts)
  const weights = luminanceWeights(parts.taking.whiteBalanceKelvin)

  // Light adds up (superposition of incoherent light).
  it('adds up to the picture', () => {
    for (let p = 0; p < asked.width * asked.height; p++) {
      const whole = weighed(weights, linear[3 * p]!, linear[3 * p + 1]!, linear[3 * p + 2]!)
      const sum = planes.reduce((so, plane) => so + plane.brightness[p]!, 0)
      expect(Math.abs(sum - whole)).toBeLessThan(1e-5 * Math.max(whole, 0.01))
    }
  })

  it('is at every kind of place what a reading of the place says', () => {
    const who = new WhoLights()
    for (let p = 0; p < asked.width * asked.height; p += 37) {
      const shares = who.at(parts, p % asked.width, Math.floor(p / asked.width))
      shares.forEach(({ channels }, i) => expect(weighed(weights, ...channels)).toBeCloseTo(planes[i]!.brightness[p]!, 6))
    }
  })

  it('names the greatest at each place', () => {
    const into = new Uint8ClampedArray(4 * asked.width * asked.height)
    const leaders = drawLeaders(planes.map((plane) => plane.brightness), leaderTints(planes.map(() => [255, 255, 255])), asked.width, asked.height, into)
    for (let p = 0; p < leaders.length; p += 11) {
      if (leaders[p] === 0) continue
      const parts = planes.map((plane) => plane.brightness[p]!)
      expect(parts[leaders[p]! - 1]).toBe(Math.max(...parts))
    }
  })
})

describe('tints of the lights', () => {
  it('are each another, and of the gel they stand for', () => {
    const [clear, orange, violet, green] = leaderTints([[230, 232, 235], [255, 178, 77], [160, 82, 255], [110, 235, 0]])
    expect(Math.max(...clear!) - Math.min(...clear!)).toBeLessThan(10)
    expect(orange![0]).toBeGreaterThan(orange![2] + 20)
    expect(violet![2]).toBeGreaterThan(violet![1])
    expect(green![1]).toBeGreaterThan(green![2] + 20)
    const many = leaderTints(Array.from({ length: 9 }, () => [200, 200, 200] as const))
    expect(new Set(many.map(String)).size).toBe(9)
  })
})

describe('letters on the parts of a picture', () => {
  it('stand once in each part that has room, in its middle', () => {
    const width = 20
    const kinds = Uint8Array.from({ length: 20 * 10 }, (_, p) => (p % width < 9 ? 1 : p % width < 11 ? 0 : 2))
    const regions = regionsOf(kinds, width, 10, 3)
    expect(regions.map(({ kind }) => kind).sort()).toEqual([1, 2])
    for (const { kind, frameX, frameY } of regions) {
      expect(Math.abs(frameX - (kind === 1 ? 0.225 : 0.775))).toBeLessThan(0.06)
      expect(Math.abs(frameY - 0.5)).toBeLessThan(0.11)
    }
  })

  it('leave out what is too thin, and count parts that meet at a corner only as two', () => {
    const kinds = Uint8Array.from({ length: 100 }, (_, p) => ((p % 10 < 5) === (p < 50) ? 1 : 0))
    expect(regionsOf(kinds, 10, 10, 3).length).toBe(2)
    expect(regionsOf(kinds, 10, 10, 4).length).toBe(0)
  })
})

describe('clipping', () => {
  it('says which channels', () => {
    const linear = Float32Array.of(1.2, 0.4, 0.2, 0.3, 1, 1.5, 2, 2, 2, 0.99, 0.99, 0.99)
    expect([...drawClipping(linear, 4, 1, new Uint8ClampedArray(16))]).toEqual([1, 6, 7, 0])
  })
})

/** A crop is the same projection through a smaller window (ray optics of a pinhole): its pixels are the Frame's own. */
describe('a part of the Frame', () => {
  it('is the Frame there', () => {
    const whole = new LookPicture(asset).draw(demoPlan, 'dusk', { ...asked, width: 240, height: 360 }).linear
    const crop = { left: 0.25, top: 0.25, width: 0.5, height: 0.25 }
    const part = new LookPicture(asset).draw(demoPlan, 'dusk', { ...asked, width: 120, height: 90, crop }).linear
    const differences: number[] = []
    for (let y = 0; y < 90; y++) {
      for (let x = 0; x < 120; x++) {
        const at = 3 * ((y + 90) * 240 + x + 60) + 1
        differences.push(Math.abs(part[3 * (y * 120 + x) + 1]! - whole[at]!))
      }
    }
    differences.sort((a, b) => a - b)
    expect(differences[Math.floor(0.5 * differences.length)]).toBeLessThan(0.001)
    // The background is drawn between the nodes of a net, and that lies elsewhere.
    expect(differences[Math.floor(0.99 * differences.length)]).toBeLessThan(0.01)
  })

  it('around the eyes holds both, level in the middle', () => {
    const crop = new LookPicture(asset).eyesCrop(demoPlan, 'dusk', 0.15, 0.05)!
    expect(crop.width).toBeGreaterThanOrEqual(0.15)
    expect(crop.width / crop.height).toBeCloseTo(3, 9)
    const { samples } = new LookPicture(asset).parts(demoPlan, 'dusk', { ...asked, width: 150, height: 75, crop }).view
    const xs = [...samples.eyes.frameX]
    expect(xs.filter((x) => x < 0.5).length).toBeGreaterThan(50)
    expect(xs.filter((x) => x > 0.5).length).toBeGreaterThan(50)
    const y = [...samples.eyes.frameY].reduce((sum, one) => sum + one, 0) / xs.length
    expect(Math.abs(y - 0.5)).toBeLessThan(0.1)
  })

  it('is none around the eyes of somebody who looks away', () => {
    const look = demoPlan.looks['dusk']!
    const turned = { ...demoPlan, looks: { ...demoPlan.looks, dusk: { ...look, subject: { ...look.subject, turnDegrees: 180 } } } }
    expect(new LookPicture(asset).eyesCrop(turned, 'dusk', 0.15, 0.05)).toBeNull()
  })
})
