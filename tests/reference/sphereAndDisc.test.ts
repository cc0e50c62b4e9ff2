import { describe, expect, it } from 'vitest'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { Scene } from '../../shared-core/set/scene.ts'
import { aLight, at, studioScene } from '../core/studioScene.ts'
import { ballSubject } from './ballSubject.ts'
import { layerFor, samplesOf } from './pictureOf.ts'

/**
 * A layer of the picture on a ball beside an evenly shining disc, against closed forms that J. R. Howell, A Catalog of
 * Radiation Heat Transfer Configuration Factors, lists: from a plane element to a coaxial parallel disc (section B), and
 * from a sphere to a coaxial disc (section C; after Feingold and Gupta 1970, from memory). The second is the share of all
 * directions from the ball's middle that the disc fills.
 */

const CLOTH = 4
const RINGS = 24
const BALL_METRES = 0.12
const HEIGHT_METRES = 1.6
const ball = ballSubject(BALL_METRES, HEIGHT_METRES, CLOTH, RINGS)

/** A disc to the camera's right of the ball, square to it; the camera so far off that it sees the half of the ball. */
function besideBall(diameterMetres: number, distanceMetres: number): Scene {
  const modifier = { kind: 'umbrella-diffused', widthMetres: diameterMetres, heightMetres: diameterMetres, depthMetres: 0.4, diffusers: 0 } as const
  const scene = studioScene({
    lights: [aLight('a', { place: at(distanceMetres, 0, HEIGHT_METRES), aim: at(0, 0, HEIGHT_METRES), modifier })],
    pieces: [],
    backdrop: { ...studioScene().backdrop, kind: 'none' },
  })
  return { ...scene, camera: { ...scene.camera, place: at(0, -60, HEIGHT_METRES), aim: at(0, 0, HEIGHT_METRES), focalLengthMillimetres: 5500 } }
}

interface OnBall {
  readonly normal: readonly [number, number, number]
  readonly ring: number
  /** Of what leaves each square metre of the disc, the share that arrives on each square metre here. */
  readonly share: number
}

/** The layer on the half that faces the camera, and how far the disc's middle lies from the ball's. */
function lit(diameterMetres: number, distanceMetres: number): { readonly places: readonly OnBall[], readonly distance: number } {
  const scene = besideBall(diameterMetres, distanceMetres)
  const emitter = builtSet(scene).lights.get('a')!.emitters.find(({ axis }) => axis[0] < 0)!
  const exitance = emitter.front.fluxShare / ((Math.PI * diameterMetres ** 2) / 4)
  const samples = samplesOf(scene, ball, 360, 480)
  const { direct } = layerFor(scene, samples, 'a')
  const { vertices, subject } = samples.surface
  const places = Array.from(vertices, (vertex, slot): OnBall => ({
    normal: [subject.normals[3 * vertex]!, subject.normals[3 * vertex + 1]!, subject.normals[3 * vertex + 2]!],
    ring: Math.floor(vertex / (2 * RINGS)),
    share: direct[slot]! / exitance,
  }))
  return { places, distance: Math.hypot(emitter.centre[0], emitter.centre[1], emitter.centre[2] - HEIGHT_METRES) }
}

describe('a ball beside a disc that shines evenly', () => {
  const cases = [[1, 1], [1.65, 1], [0.6, 0.5], [1.65, 2]] as const

  it.each(cases)('as a whole: diameter %d m at %d m', (diameterMetres, distanceMetres) => {
    const { places, distance } = lit(diameterMetres, distanceMetres)
    // Every other ring has its points half a step off the rim of what is seen: their sum by area is the midpoint rule.
    const rows = places.filter(({ ring, normal }) => ring % 2 === 1 && normal[1] < 0)
    expect(rows.length).toBe((RINGS / 2) * RINGS)
    let light = 0
    let area = 0
    for (const { normal, share } of rows) {
      const weight = Math.sqrt(1 - normal[2] ** 2)
      light += weight * share
      area += weight
    }
    const ratio = diameterMetres / 2 / distance
    expect(light / area / (0.5 * (1 - 1 / Math.sqrt(1 + ratio * ratio)))).toBeCloseTo(1, 2)
  })

  it.each(cases)('at the point nearest to it: diameter %d m at %d m', (diameterMetres, distanceMetres) => {
    const { places, distance } = lit(diameterMetres, distanceMetres)
    const nearest = places.reduce((best, place) => (place.normal[0] > best.normal[0] ? place : best))
    expect(nearest.normal[0]).toBeGreaterThan(0.995)
    const radius = diameterMetres / 2
    const height = distance - BALL_METRES
    // Square to the disc but for the few degrees to the nearest point that is seen.
    expect(nearest.share / (radius ** 2 / (radius ** 2 + height ** 2))).toBeCloseTo(1, 1.7)
  })
})
