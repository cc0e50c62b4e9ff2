import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { direction, subtract } from '../../shared-core/arithmetic/vector.ts'
import { spotWeights, stopsOverGrey } from '../../shared-core/picture/spotReading.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture, type PictureRequest } from '../../shared-core/predict/lookPicture.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import type { AreaPrediction } from '../../shared-core/predict/prediction.ts'
import { WhoLights } from '../../shared-core/predict/whoLights.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import { isInOwnShadow } from '../../shared-core/set/ownShadow.ts'
import { areaAsset, cornerWeights } from '../../shared-core/subject/areas/areaAsset.ts'
import { subjectAreas } from '../../shared-core/subject/areas/subjectAreas.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { WORDS } from '../../shared-core/subject/asset/selfShadow.ts'
import { skinReflectance } from '../../shared-core/spectra/surface/skin.ts'
import { materialAt } from '../../shared-core/subject/field/subjectField.ts'
import { nearestFacet } from '../derivations/nearestFacet.ts'

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const SEEN = ['nose', 'lips', 'neck', 'breastbone', 'cheek-left', 'cheek-right', 'shoulder-left', 'shoulder-right']
const looks = ['dusk', 'first-light']

/**
 * Areas that the camera sees where they are. Left out, with a number but no pixel of their own: the jaws, which face
 * sideways and lie behind the curve of the cheek, and hair, whose strands are lighter and darker than its own colour.
 */
function seenAreas(plan: Plan, lookId: string): AreaPrediction[] {
  const set = builtSet(new LookPicture(asset).parts(plan, lookId, { width: 8, height: 12, soloLightId: null, coarse: true }).scene)
  return predict(plan, lookId).areas.filter(({ id, material, place, inFrame }) => {
    if (!['skin', 'lips', 'cloth'].includes(material) || !inFrame) return false
    const { ownShadow } = set.form.areas.find((area) => area.id === id)!
    return !isInOwnShadow(ownShadow, ...direction(subtract(set.view.place, place)))
  })
}

/** A picture of half a millimetre around an area: where a light's edge crosses a cheek it changes by a quarter in one. */
const SIDE = 15
const closeUp = ({ frameX, frameY }: AreaPrediction, soloLightId: string | null): PictureRequest => ({
  width: SIDE, height: SIDE, soloLightId, coarse: false,
  crop: { left: frameX - 0.0003, top: frameY - 0.0002, width: 0.0006, height: 0.0004 },
})

/** Mean of the nine pixels in the middle. */
function middleOf(linear: Float32Array, width: number, x: number, y: number): readonly [number, number, number] {
  const sum: [number, number, number] = [0, 0, 0]
  for (let j = y - 1; j <= y + 1; j++) {
    for (let i = x - 1; i <= x + 1; i++) for (let k = 0; k < 3; k++) sum[k]! += linear[3 * (j * width + i) + k]! / 9
  }
  return sum
}

function pixelOf(linear: Float32Array, width: number, x: number, y: number): readonly [number, number, number] {
  const at = 3 * (y * width + x)
  return [linear[at]!, linear[at + 1]!, linear[at + 2]!]
}

/** Between the middles of the four pixels around a place. */
function between(linear: Float32Array, width: number, x: number, y: number): readonly [number, number, number] {
  const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)]
  const [right, down] = [x - 0.5 - left, y - 0.5 - top]
  const sum: [number, number, number] = [0, 0, 0]
  for (const [i, j, share] of [[0, 0, (1 - right) * (1 - down)], [1, 0, right * (1 - down)], [0, 1, (1 - right) * down], [1, 1, right * down]] as const) {
    pixelOf(linear, width, left + i, top + j).forEach((value, k) => (sum[k]! += share * value))
  }
  return sum
}

function expectWithin(share: number, found: readonly number[], seen: readonly number[], what: string): void {
  found.forEach((value, k) => expect(Math.abs(value / seen[k]! - 1), `${what}, channel ${k}`).toBeLessThan(share))
}

describe('the areas of the subject', () => {
  it('lie on the facets of the surface nearest to them, as the asset has those', () => {
    subjectAreas.forEach(({ place }, area) => {
      const { vertices, weights } = nearestFacet(asset, place)
      vertices.forEach((vertex, i) => {
        const corner = 3 * area + i
        for (let k = 0; k < 3; k++) {
          expect(areaAsset.positions[3 * corner + k]).toBe(asset.positions[3 * vertex + k])
          expect(areaAsset.normals[3 * corner + k]).toBe(asset.normals[3 * vertex + k])
        }
        expect(areaAsset.materials[corner]).toBe(asset.materials[vertex])
        expect(areaAsset.selfShadow.subarray(WORDS * corner, WORDS * (corner + 1))).toEqual(asset.selfShadow.subarray(WORDS * vertex, WORDS * (vertex + 1)))
        expect(Math.abs(cornerWeights[corner]! - weights[i]!)).toBeLessThan(1.01e-4)
      })
    })
  })

  it('are all of their one material: nothing of another shows through', () => {
    for (const { place, material } of subjectAreas) {
      const { lips, hair, brow, lash, cloth } = materialAt(...place)
      expect({ lips, hair, brow, lash, cloth }).toEqual({ lips: 0, hair: 0, brow: 0, lash: 0, cloth: 0, ...(material === 'skin' ? {} : { [material]: 1 }) })
    }
  })
})

describe('what an area says is what the picture shows there', () => {
  for (const lookId of looks) {
    it(`${lookId}: each light alone and all together, in all channels`, () => {
      const areas = seenAreas(demoPlan, lookId)
      expect(areas.map(({ id }) => id)).toEqual(SEEN)
      const picture = new LookPicture(asset)
      for (const area of areas) {
        const shown = (lightId: string | null) => middleOf(picture.draw(demoPlan, lookId, closeUp(area, lightId)).linear, SIDE, 7, 7)
        const all = shown(null)
        expectWithin(0.005, area.colour.channels, all, `${lookId} ${area.id}`)
        for (const { lightId, channels } of area.byLight) {
          if (Math.max(...channels) < 0.05 * Math.max(...all)) continue
          // A front that stands about its own width away is mirrored by more points or by fewer, whichever side of that the
          // middle of what is drawn lies: a close-up's middle is not the subject's. Worth 3 % of one light.
          expectWithin(0.03, channels, shown(lightId), `${lookId} ${area.id} ${lightId}`)
        }
      }
    })
  }

  it('so the pointer over an area in a picture as large as the Frame reads what the Ladder says', () => {
    for (const lookId of looks) {
      const request = { width: 400, height: 600, soloLightId: null, coarse: false }
      const picture = new LookPicture(asset)
      const { linear } = picture.draw(demoPlan, lookId, request)
      const weights = spotWeights(demoPlan.looks[lookId]!.camera)
      const parts = picture.parts(demoPlan, lookId, request)
      for (const { id, frameX, frameY, colour, byLight } of seenAreas(demoPlan, lookId)) {
        const off = (channels: readonly [number, number, number]): number => Math.abs(colour.spotStopsOverGrey! - stopsOverGrey(weights, ...channels))
        expect(off(between(linear, 400, frameX * 400, frameY * 600)), `${lookId} ${id}`).toBeLessThan(0.04)
        // The pixel under the pointer has its middle up to a millimetre away: on the tip of a nose and on a lip, bent over
        // less than a centimetre, that is six degrees and more; elsewhere a tenth of a stop at most.
        const [x, y] = [Math.floor(frameX * 400), Math.floor(frameY * 600)]
        expect(off(pixelOf(linear, 400, x, y)), `${lookId} ${id}, its pixel`).toBeLessThan(id === 'nose' ? 0.2 : 0.1)
        for (const { lightId, share } of new WhoLights().at(parts, x, y)) {
          expect(Math.abs(byLight.find((given) => given.lightId === lightId)!.share - share), `${lookId} ${id} ${lightId}`).toBeLessThan(0.04)
        }
      }
    }
  })
})

describe('sheen in the numbers', () => {
  const withSkin = (itaDegrees: number, sheen: number): Plan => {
    const look = demoPlan.looks['dusk']!
    return { ...demoPlan, looks: { ...demoPlan.looks, dusk: { ...look, subject: { ...look.subject, skinItaDegrees: itaDegrees, skinSheen: sheen } } } }
  }

  it('dewy deep skin carries the colour of the light at its edge, as the picture does', () => {
    const edge = Object.entries(demoPlan.looks['dusk']!.lights).find(([, { letter }]) => letter === 'B')![0]
    const deep = withSkin(-40, 1)
    const area = predict(deep, 'dusk').areas.find(({ id }) => id === 'cheek-right')!
    const given = area.byLight.find(({ lightId }) => lightId === edge)!
    const picture = new LookPicture(asset)
    // The same choice of points as above, on skin that mirrors most.
    expectWithin(0.05, given.channels, middleOf(picture.draw(deep, 'dusk', closeUp(area, edge)).linear, SIDE, 7, 7), 'deep, dewy')
    // Where light grazes, a surface mirrors more than straight ahead (Fresnel) and keeps the light's colour: every channel
    // is above what all of the measured reflectance would return of the same exposure without any direction (Lambert).
    const { lights } = picture.parts(deep, 'dusk', closeUp(area, edge))
    const matt = lights[0]!.fired.firing.palette.leg(null, skinReflectance({ itaDegrees: -40, undertone: deep.looks['dusk']!.subject.skinUndertone }))
    const bare = lights[0]!.fired.firing.palette.leg(null, null)
    const lambert = matt.channels.map((channel) => (channel * given.exposureLuxSeconds) / bare.luminance / predict(deep, 'dusk').taking.clipLuxSeconds)
    given.channels.forEach((channel, k) => expect(channel).toBeGreaterThan(lambert[k]!))
    // What is over has the lamp's own proportions, not the skin's: its weakest channel is lifted most.
    const lifts = given.channels.map((channel, k) => channel / lambert[k]!)
    const skin = matt.channels.map((channel, k) => channel / bare.channels[k]!)
    expect(lifts.indexOf(Math.max(...lifts))).toBe(skin.indexOf(Math.min(...skin)))
  })
})

describe('one spot reading', () => {
  it('calls a neutral 3.263 stops below clip mid-grey, and follows a body that clips later', () => {
    // log2(78 / (0.65 x 12.5)) = 3.263 (ISO 12232, ISO 2720); headroom moves clip, and the same light stays as it was.
    const grey = 2 ** -3.263
    for (const whiteBalanceKelvin of [3200, 5500, 7500]) {
      expect(stopsOverGrey(spotWeights({ whiteBalanceKelvin, headroomStops: 0 }), grey, grey, grey)).toBeCloseTo(0, 3)
      expect(stopsOverGrey(spotWeights({ whiteBalanceKelvin, headroomStops: 1 }), grey / 2, grey / 2, grey / 2)).toBeCloseTo(0, 3)
    }
  })

  it('is above 0 for each channel at every white balance a camera has', () => {
    for (const whiteBalanceKelvin of [2500, 4000, 5500, 10_000]) {
      for (const weight of spotWeights({ whiteBalanceKelvin, headroomStops: 0 })) expect(weight).toBeGreaterThan(0)
    }
  })
})
