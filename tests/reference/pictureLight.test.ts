import { readFileSync } from 'node:fs'
import { describe, expect, it, vi } from 'vitest'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { Emitter } from '../../shared-core/set/emitter.ts'
import type { Scene, SceneLight } from '../../shared-core/set/scene.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { aLight, aPiece, at, face, noGrid, studioScene } from '../core/studioScene.ts'
import { ballSubject } from './ballSubject.ts'
import { bruteForce, type PlainFront, type PlainPlate } from './bruteForce.ts'
import { layerFor, percentile99, rootMeanSquare, samplesOf } from './pictureOf.ts'
import { PlainTriangles } from './plainTriangles.ts'

vi.setConfig({ testTimeout: 30_000 })

/** Cloth: of all materials the least mirrored, and its exposure is what is checked here. */
const CLOTH = 4
const ball = ballSubject(0.12, 1.6, CLOTH)
const subject = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const noBackdrop = { kind: 'none', swatch: '#7c7c7c', yMetres: 2.4, centreXMetres: 0, widthMetres: 2.7, topMetres: 2.9 } as const

function emptyStudio(lights: readonly SceneLight[], changes: Partial<Scene> = {}): Scene {
  return studioScene({ lights, backdrop: noBackdrop, pieces: [], ...changes })
}

/** Radiance at an angle, written out: a cosine to the lobe's power; only fronts without a grid are used here. */
function plainFront(emitter: Emitter): PlainFront {
  const { lobeExponent, widthMetres, heightMetres, fluxShare, shape } = emitter.front
  const area = shape === 'octagon' ? 2 * (Math.SQRT2 - 1) * widthMetres ** 2
    : shape === 'disc' ? (Math.PI * widthMetres ** 2) / 4 : widthMetres * heightMetres
  const axial = ((fluxShare / area) * (lobeExponent + 2)) / (2 * Math.PI)
  const half = widthMetres / 2
  const holds = (u: number, v: number): boolean =>
    shape === 'disc' ? u * u + v * v <= half * half
      : shape === 'octagon' ? Math.abs(u) <= half && Math.abs(v) <= half && Math.abs(u) + Math.abs(v) <= Math.SQRT2 * half
        : true
  return {
    centre: emitter.centre, axis: emitter.axis, across: emitter.across, up: emitter.up, holds,
    halfWidth: half, halfHeight: heightMetres / 2, radiance: (cosine) => axial * cosine ** lobeExponent,
  }
}

const modifiers: Record<string, Partial<SceneLight>> = {
  'an octa 100 at 1.2 m': {},
  'the same at 0.6 m': { place: at(-0.3, -0.4, 1.85) },
  'a strip behind': {
    place: at(1.05, 0.95, 1.75), modifier: { kind: 'strip', widthMetres: 0.35, heightMetres: 1.4, depthMetres: 0.4, diffusers: 2 },
  },
  'an umbrella 165': {
    place: at(1.55, -1.55, 1.75), modifier: { kind: 'umbrella-silver', widthMetres: 1.65, heightMetres: 1.65, depthMetres: 0.6, diffusers: 0 },
  },
  'a softbox 90 x 120 beside the head': {
    place: at(0.7, -0.2, 1.6), modifier: { kind: 'softbox', widthMetres: 0.9, heightMetres: 1.2, depthMetres: 0.5, diffusers: 2 },
  },
  'a reflector at 2 m': {
    place: at(-1.2, -1.4, 2.3), modifier: { kind: 'reflector', widthMetres: 0.18, heightMetres: 0.18, depthMetres: 0.15, diffusers: 0 },
  },
}

describe('a light on a ball with nothing in the way, against a dense count of points', () => {
  for (const [name, changes] of Object.entries(modifiers)) {
    it(name, () => {
      const scene = emptyStudio([aLight('a', { aim: at(0, 0, 1.6), ...changes })])
      const samples = samplesOf(scene, ball)
      const { direct } = layerFor(scene, samples, 'a')
      const { vertices, positions, subject: posed } = samples.surface
      const front = plainFront(builtSet(scene).lights.get('a')!.emitters[0]!)
      const found: number[] = []
      const dense: number[] = []
      for (let slot = 0; slot < vertices.length; slot += 7) {
        const v = 3 * vertices[slot]!
        found.push(direct[slot]!)
        dense.push(bruteForce(front, [positions[3 * slot]!, positions[3 * slot + 1]!, positions[3 * slot + 2]!],
          [posed.normals[v]!, posed.normals[v + 1]!, posed.normals[v + 2]!], [], [], 150).flat)
      }
      const bright = percentile99(dense)
      expect(bright).toBeGreaterThan(0)
      found.forEach((value, i) => expect(Math.abs(value - dense[i]!), `${value} for ${dense[i]}`).toBeLessThan(0.005 * bright))
    })
  }
})

describe('a bare tube', () => {
  it('goes by the inverse square and the cosine (Lambert)', () => {
    const modifier = { kind: 'bare-tube', widthMetres: 0.06, heightMetres: 0.06, depthMetres: 0.1, diffusers: 0 } as const
    const scene = emptyStudio([aLight('a', { place: at(-0.9, -1.1, 2.1), modifier })])
    const samples = samplesOf(scene, ball)
    const { direct } = layerFor(scene, samples, 'a')
    const { vertices, positions, subject: posed } = samples.surface
    let brightest = 0
    const misses = Array.from(vertices, (vertex, slot) => {
      const to = [-0.9, -1.1, 2.1].map((value, k) => value - positions[3 * slot + k]!)
      const square = to.reduce((sum, value) => sum + value * value, 0)
      const cosine = to.reduce((sum, value, k) => sum + value * posed.normals[3 * vertex + k]!, 0) / Math.sqrt(square)
      const wanted = Math.max(0, cosine) / (4 * Math.PI * square)
      brightest = Math.max(brightest, wanted)
      return Math.abs(direct[slot]! - wanted)
    })
    expect(Math.max(...misses) / brightest).toBeLessThan(0.01)
  })
})

/** Cells across the front for the traced reference. */
const TRACED_SIDE = 22
/** The subject's own shadow is traced from this far above the skin. */
const LIFT_METRES = 0.0003
/** Of the vertices that the camera sees, one in so many is traced. */
const EVERY = 55

const trees = new Map<string, PlainTriangles>()

/** So few cells misjudge a round front's area at its rim: the whole of them is made to hold the front's light. */
function withTrueArea(front: PlainFront): PlainFront {
  const inside = (side: number): number => {
    let count = 0
    for (let i = 0; i < side * side; i++) {
      const [u, v] = [(2 * (i % side) + 1) / side - 1, (2 * Math.floor(i / side) + 1) / side - 1]
      if (front.holds(u * front.halfWidth, v * front.halfHeight)) count++
    }
    return count / (side * side)
  }
  const share = inside(1000) / inside(TRACED_SIDE)
  return { ...front, radiance: (cosine) => share * front.radiance(cosine) }
}

function tracedRow(scene: Scene, plates: readonly PlainPlate[]): { error: number, bright: number } {
  const samples = samplesOf(scene, subject, 180, 240)
  const { direct } = layerFor(scene, samples, 'a')
  const { vertices, subject: posed } = samples.surface
  const pose = JSON.stringify(scene.subject)
  const triangles = trees.get(pose) ?? new PlainTriangles(posed.positions, subject.triangles)
  trees.set(pose, triangles)
  const front = withTrueArea(plainFront(builtSet(scene).lights.get('a')!.emitters[0]!))
  const found: number[] = []
  const traced: number[] = []
  for (let slot = 0; slot < vertices.length; slot += EVERY) {
    const v = 3 * vertices[slot]!
    const normal = [posed.normals[v]!, posed.normals[v + 1]!, posed.normals[v + 2]!] as const
    const place = [0, 1, 2].map((k) => posed.positions[v + k]! + LIFT_METRES * normal[k]!) as unknown as readonly [number, number, number]
    const seen: PlainFront = {
      ...front,
      holds: (x, y) => front.holds(x, y) && !triangles.blocks(place,
        [0, 1, 2].map((k) => front.centre[k]! + x * front.across[k]! + y * front.up[k]!) as unknown as readonly [number, number, number], 0),
    }
    found.push(direct[slot]!)
    traced.push(bruteForce(seen, place, normal, [], plates, TRACED_SIDE).flat)
  }
  const bright = percentile99(traced)
  return { error: rootMeanSquare(found, traced) / bright, bright }
}

describe('a light on the subject, in its own shadow, against rays traced to its facets', () => {
  const everyModifier: Record<string, Partial<SceneLight>> = {
    'the key': {},
    'a strip behind': modifiers['a strip behind']!,
    'a softbox from the side': {
      place: at(1.4, 0.1, 1.6), modifier: { kind: 'softbox', widthMetres: 0.9, heightMetres: 1.2, depthMetres: 0.5, diffusers: 2 },
    },
    'a box right behind': {
      place: at(0, 0.8, 1.5), modifier: { kind: 'softbox', widthMetres: 1.2, heightMetres: 1.8, depthMetres: 0.5, diffusers: 2 },
    },
  }
  for (const [name, changes] of Object.entries(everyModifier)) {
    it(`${name}: within 1 % of what is bright, root mean square`, () => {
      const { error, bright } = tracedRow(emptyStudio([aLight('a', changes)]), [])
      expect(bright).toBeGreaterThan(0)
    expect(error).toBeLessThan(0.01)
    })
  }

  it('the key on a body turned as a whole', () => {
    const turned = { ...emptyStudio([aLight('a')]).subject, turnDegrees: 35, heightMetres: 1.62, xMetres: 0.1 }
    const { error } = tracedRow(emptyStudio([aLight('a')], { subject: turned }), [])
    expect(error).toBeLessThan(0.01)
  })

  it('a head turned on its neck: the shadow is that at rest, turned along', () => {
    const turned = { ...emptyStudio([aLight('a')]).subject, headTurnDegrees: 30, headTiltDegrees: 8 }
    const { error } = tracedRow(emptyStudio([aLight('a')], { subject: turned }), [])
    expect(error).toBeLessThan(0.03)
  })

  it('a flag in the key', () => {
    const flag = aPiece('flag', { kind: 'flag', place: at(-0.4, -0.45, 1.78), facingDegrees: -45, widthMetres: 0.3, heightMetres: 0.25, front: '#161616', back: '#161616' })
    const scene = emptyStudio([aLight('a')], { pieces: [flag] })
    const panel = builtSet(scene).panels.find(({ halfWidthMetres }) => halfWidthMetres === 0.15)!
    const plate: PlainPlate = { ...panel, halfWidth: panel.halfWidthMetres, halfHeight: panel.halfHeightMetres, round: false }
    const { error, bright } = tracedRow(scene, [plate])
    const open = tracedRow(emptyStudio([aLight('a')]), [])
    // The flag does something, or the check would be of nothing.
    expect(bright).toBeLessThan(0.97 * open.bright)
    expect(error).toBeLessThan(0.015)
  })
})

describe('what never is', () => {
  it('light where the surface faces away from all of a front', () => {
    const scene = emptyStudio([aLight('a', { place: at(-1.5, 0.4, 1.6), aim: face, grid: noGrid })])
    const samples = samplesOf(scene, ball)
    const { direct, sheen } = layerFor(scene, samples, 'a')
    const { vertices, positions, subject: posed } = samples.surface
    const { corners } = builtSet(scene).lights.get('a')!.emitters[0]!
    let dark = 0
    vertices.forEach((vertex, slot) => {
      const rises = Array.from({ length: corners.length / 3 }, (_, c) => [0, 1, 2].reduce((sum, k) =>
        sum + (corners[3 * c + k]! - positions[3 * slot + k]!) * posed.normals[3 * vertex + k]!, 0))
      if (Math.max(...rises) > 0) return
      dark++
      expect(direct[slot]).toBe(0)
      expect(sheen[slot]).toBe(0)
    })
    expect(dark).toBeGreaterThan(20)
  })
})
