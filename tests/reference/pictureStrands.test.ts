import { describe, expect, it } from 'vitest'
import { sheenOf } from '../../shared-core/picture/material.ts'
import { MESH_HAIR } from '../../shared-core/picture/seenSurface.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import { aLight, at, studioScene } from '../core/studioScene.ts'
import { ballSubject } from './ballSubject.ts'
import { layerFor, percentile99, rootMeanSquare, samplesOf } from './pictureOf.ts'

/**
 * Highlights on a ball of hair against a dense count of points, each through a strand's first reflection: a normal
 * distribution of the half-vector along the strand times a quarter of Fresnel's share round it (Marschner et al. 2003, M_R
 * and N_R without its cosine), Fresnel by Schlick (1994) for an index of 1.55. Shares no code with the picture but the
 * way the strands lie.
 */

const SPREAD = 0.16
const F0 = (0.55 / 2.55) ** 2
const noBackdrop = { kind: 'none', swatch: '#7c7c7c', yMetres: 2.4, centreXMetres: 0, widthMetres: 2.7, topMetres: 2.9 } as const
const box = { kind: 'softbox', widthMetres: 0.9, heightMetres: 1.2, depthMetres: 0.5, diffusers: 2 } as const

type Three = readonly [number, number, number]
const inner = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const unit = (a: Three): Three => {
  const size = Math.hypot(...a)
  return [a[0] / size, a[1] / size, a[2] / size]
}

function firstReflection(strand: Three, l: Three, v: Three): number {
  const h = unit([l[0] + v[0], l[1] + v[1], l[2] + v[2]])
  const fresnel = F0 + (1 - F0) * (1 - inner(v, h)) ** 5
  return (fresnel / 4) * Math.exp(-((inner(h, strand) / SPREAD) ** 2) / 2) / (SPREAD * Math.sqrt(2 * Math.PI))
}

describe('a highlight on hair', () => {
  it.each([
    ['of a box at the camera side', [-0.9, -0.9, 2.1]], ['of a box behind, where it grazes', [1.3, 1, 1.9]],
  ] as const)('%s', (_, [x, y, z]) => {
    const scene = studioScene({ lights: [aLight('a', { place: at(x, y, z), aim: at(0, 0, 1.6), modifier: box })], backdrop: noBackdrop })
    const samples = samplesOf(scene, ballSubject(0.12, 1.6, MESH_HAIR))
    const { sheen } = layerFor(scene, samples, 'a')
    const { positions, vertices, subject, strands } = samples.surface
    const { lights, view } = builtSet(scene)
    const { centre, across, up, axis, front } = lights.get('a')!.emitters[0]!
    const strength = sheenOf('hair', 0.3).strength
    const found: number[] = []
    const dense: number[] = []
    for (let slot = 0; slot < vertices.length; slot += 3) {
      const three = (from: ArrayLike<number>, i: number): Three => [from[3 * i]!, from[3 * i + 1]!, from[3 * i + 2]!]
      const [place, n, strand] = [three(positions, slot), three(subject.normals, vertices[slot]!), three(strands, slot)]
      const v = unit([0, 1, 2].map((k) => view.place[k]! - place[k]!) as unknown as Three)
      if (inner(n, v) < 0.05) continue
      const side = 40
      let sum = 0
      for (let i = 0; i < side * side; i++) {
        const [a, b] = [((i % side) + 0.5) / side - 0.5, (Math.floor(i / side) + 0.5) / side - 0.5]
        const to = [0, 1, 2].map((k) => centre[k]! + a * 0.9 * across[k]! + b * 1.2 * up[k]! - place[k]!) as unknown as Three
        const l = unit(to)
        const [nl, atFront] = [inner(n, l), -inner(axis, l)]
        if (nl > 0 && atFront > 0) sum += (firstReflection(strand, l, v) * nl * atFront) / inner(to, to)
      }
      // Radiance of an even diffuser is its exitance over pi; as a white that looks the same, pi times what is mirrored.
      found.push(sheen[slot]!)
      dense.push((strength * front.fluxShare * sum) / (side * side))
    }
    const bright = percentile99(dense)
    expect(bright).toBeGreaterThan(0)
    expect(rootMeanSquare(found, dense) / bright).toBeLessThan(0.03)
  })
})
