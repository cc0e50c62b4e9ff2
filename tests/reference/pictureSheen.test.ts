import { describe, expect, it } from 'vitest'
import { sheenOf } from '../../shared-core/picture/material.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { Emitter } from '../../shared-core/set/emitter.ts'
import type { SceneLight } from '../../shared-core/set/scene.ts'
import { aLight, at, studioScene } from '../core/studioScene.ts'
import { ballSubject } from './ballSubject.ts'
import { layerFor, percentile99, rootMeanSquare, samplesOf } from './pictureOf.ts'

/**
 * Highlights on a ball of skin against a dense count of points, each through the lobe as published: GGX and Smith's joint
 * masking (Walter et al. 2007; Heitz 2014), Fresnel by Schlick (1994) for an index of 1.4. Shares no code with the picture.
 */

const SKIN = 0
const SKIN_SHEEN = 0.3
const MIDDLE = [0, 0, 1.6] as const
const ball = ballSubject(0.12, MIDDLE[2], SKIN)
const noBackdrop = { kind: 'none', swatch: '#7c7c7c', yMetres: 2.4, centreXMetres: 0, widthMetres: 2.7, topMetres: 2.9 } as const

type Three = readonly [number, number, number]
const minus = (a: Three, b: Three): Three => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const inner = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const unit = (a: Three): Three => {
  const size = Math.hypot(...a)
  return [a[0] / size, a[1] / size, a[2] / size]
}

function publishedBrdf(alpha: number, n: Three, l: Three, v: Three): number {
  const h = unit([l[0] + v[0], l[1] + v[1], l[2] + v[2]])
  const [nl, nv, nh, vh] = [inner(n, l), inner(n, v), inner(n, h), inner(v, h)]
  const d = alpha ** 2 / (Math.PI * (nh ** 2 * (alpha ** 2 - 1) + 1) ** 2)
  const lambda = (cosine: number): number => (Math.sqrt(1 + alpha ** 2 * (1 / cosine ** 2 - 1)) - 1) / 2
  const masking = 1 / (1 + lambda(nl) + lambda(nv))
  const f0 = (0.4 / 2.4) ** 2
  return (d * masking * (f0 + (1 - f0) * (1 - vh) ** 5)) / (4 * nl * nv)
}

/** Exposure of the perfect white that would look as what a place mirrors of a diffusing rectangle or disc. */
function denseSheen({ front, centre, axis, across, up }: Emitter, place: Three, n: Three, eye: Three): number {
  const isRound = front.shape === 'disc'
  const area = isRound ? (Math.PI * front.widthMetres ** 2) / 4 : front.widthMetres * front.heightMetres
  const radiance = front.fluxShare / area / Math.PI
  const { alpha, strength } = sheenOf('skin', SKIN_SHEEN)
  const v = unit(minus(eye, place))
  if (inner(n, v) < 0.05) return NaN
  const [columns, rows] = [32, 64]
  let sum = 0
  for (let i = 0; i < columns * rows; i++) {
    const [a, b] = [((i % columns) + 0.5) / columns, (Math.floor(i / columns) + 0.5) / rows]
    const radius = (front.widthMetres / 2) * Math.sqrt(a)
    const x = isRound ? radius * Math.cos(2 * Math.PI * b) : (a - 0.5) * front.widthMetres
    const y = isRound ? radius * Math.sin(2 * Math.PI * b) : (b - 0.5) * front.heightMetres
    const to = minus([0, 1, 2].map((k) => centre[k]! + x * across[k]! + y * up[k]!) as unknown as Three, place)
    const l = unit(to)
    const [nl, atFront] = [inner(n, l), -inner(axis, l)]
    if (nl <= 0 || atFront <= 0) continue
    sum += (publishedBrdf(alpha, n, l, v) * nl * atFront) / inner(to, to)
  }
  return (Math.PI * strength * radiance * area * sum) / (columns * rows)
}

const strip = { kind: 'strip', widthMetres: 0.35, heightMetres: 1.4, depthMetres: 0.4, diffusers: 2 } as const
const box = { kind: 'softbox', widthMetres: 0.9, heightMetres: 1.2, depthMetres: 0.5, diffusers: 2 } as const
const umbrella = { kind: 'umbrella-diffused', widthMetres: 1.65, heightMetres: 1.65, depthMetres: 0.6, diffusers: 0 } as const

function sceneWith(modifier: SceneLight['modifier'], [x, y, z]: Three) {
  return studioScene({ lights: [aLight('a', { place: at(x, y, z), aim: at(...MIDDLE), modifier })], pieces: [], backdrop: noBackdrop })
}

function sheenOn(modifier: SceneLight['modifier'], place: Three) {
  const scene = sceneWith(modifier, place)
  const samples = samplesOf(scene, ball)
  return { scene, samples, sheen: layerFor(scene, samples, 'a', SKIN_SHEEN).sheen }
}

describe('a highlight', () => {
  it.each([
    ['of a box at the camera side', box, [-0.9, -0.9, 2.1]],
    ['of a strip at the camera side', strip, [1, -0.8, 1.7]],
    ['of an umbrella', umbrella, [1.2, -1.3, 1.8]],
    ['of a strip behind, where it grazes', strip, [1.05, 0.95, 1.75]],
    ['of a box behind, where it grazes', box, [1.3, 1, 1.9]],
  ] as const)('%s', (_, modifier, place) => {
    const { scene, samples, sheen } = sheenOn(modifier, place)
    const { positions, vertices, subject } = samples.surface
    const { lights, view } = builtSet(scene)
    const emitter = lights.get('a')!.emitters[0]!
    const found: number[] = []
    const dense: number[] = []
    for (let slot = 0; slot < vertices.length; slot += 3) {
      const three = (from: ArrayLike<number>, i: number): Three => [from[3 * i]!, from[3 * i + 1]!, from[3 * i + 2]!]
      const wanted = denseSheen(emitter, three(positions, slot), three(subject.normals, vertices[slot]!), view.place)
      if (Number.isNaN(wanted)) continue
      found.push(sheen[slot]!)
      dense.push(wanted)
    }
    const bright = percentile99(dense)
    expect(bright).toBeGreaterThan(0)
    expect(rootMeanSquare(found, dense) / bright).toBeLessThan(0.01)
  })

  it.each([['box', box], ['strip', strip]] as const)('of a %s does not jump as the light is drawn away past its own size', (_, modifier) => {
    const size = Math.hypot(modifier.widthMetres, modifier.heightMetres)
    const way = unit([1.1, 0.95, 0.3])
    const steps = Array.from({ length: 21 }, (_, k) => 0.9 + 0.01 * k).map((widths) =>
      sheenOn(modifier, [0, 1, 2].map((k) => MIDDLE[k]! + way[k]! * widths * size) as unknown as Three).sheen)
    const bright = percentile99(steps[10]!)
    for (let k = 1; k < steps.length - 1; k++) {
      const bends = Array.from(steps[k]!, (value, slot) => Math.abs(steps[k + 1]![slot]! - 2 * value + steps[k - 1]![slot]!))
      expect(Math.max(...bends)).toBeLessThan(0.004 * bright)
    }
  })
})
