import { describe, expect, it } from 'vitest'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { SubjectAsset } from '../../shared-core/subject/asset/format.ts'
import { aLight, at, studioScene } from '../core/studioScene.ts'
import { ballSubject } from './ballSubject.ts'
import { layerFor, samplesOf } from './pictureOf.ts'

/** Cloth: of all materials the least mirrored. */
const CLOTH = 4
const tube = { kind: 'bare-tube', widthMetres: 0.06, heightMetres: 0.06, depthMetres: 0.1, diffusers: 0 } as const
const noBackdrop = { kind: 'none', swatch: '#7c7c7c', yMetres: 2.4, centreXMetres: 0, widthMetres: 2.7, topMetres: 2.9 } as const

/** Two balls as one subject, whose middle is between them. */
function together(a: SubjectAsset, b: SubjectAsset): SubjectAsset {
  const after = a.positions.length / 3
  return {
    positions: Float32Array.from([...a.positions, ...b.positions]), normals: Float32Array.from([...a.normals, ...b.normals]),
    triangles: Uint32Array.from([...a.triangles, ...[...b.triangles].map((corner) => corner + after)]),
    materials: Uint8Array.from([...a.materials, ...b.materials]), selfShadow: Uint32Array.from([...a.selfShadow, ...b.selfShadow]),
  }
}

describe('a bare tube', () => {
  it('shines on all that faces it by the inverse square and the cosine, to both sides of itself', () => {
    const scene = studioScene({ lights: [aLight('x', { place: at(0, -0.1, 1.42), aim: at(0, 0, 1.3), modifier: { ...tube, widthMetres: 0.03, heightMetres: 0.03 } })], backdrop: noBackdrop })
    const samples = samplesOf(scene, together(ballSubject(0.12, 1.6, CLOTH), ballSubject(0.12, 1.0, CLOTH)))
    const { direct } = layerFor(scene, samples, 'x')
    const { vertices, positions, subject } = samples.surface
    let above = 0
    let below = 0
    for (let slot = 0; slot < vertices.length; slot++) {
      const [x, y, z] = [0, 1, 2].map((k) => [0, -0.1, 1.42][k]! - positions[3 * slot + k]!) as [number, number, number]
      const [nx, ny, nz] = [0, 1, 2].map((k) => subject.normals[3 * vertices[slot]! + k]!) as [number, number, number]
      const away = Math.hypot(x, y, z)
      const cosine = (x * nx + y * ny + z * nz) / away
      // At a grazing angle the tube's own width shows.
      if (cosine < 0.3) continue
      if (z < 0) above++
      else below++
      // Lambert: E = I cos / d^2, I = flux / 4 pi of a source that is alike all round.
      expect(direct[slot]! / (cosine / (4 * Math.PI * away * away)), `${positions.slice(3 * slot, 3 * slot + 3).join()}`).toBeCloseTo(1, 1)
    }
    expect(above).toBeGreaterThan(50)
    expect(below).toBeGreaterThan(50)
  })

  it('has the luminance of a ball that is alike all round: intensity flux / 4 pi over the disc one sees (Lambert)', () => {
    const scene = studioScene({ lights: [aLight('x', { modifier: tube })] })
    const [emitter] = builtSet(scene).lights.get('x')!.emitters
    expect(emitter!.axialRadiancePerLumenSecond * Math.PI * 0.03 * 0.03).toBeCloseTo(1 / (4 * Math.PI), 9)
  })
})
