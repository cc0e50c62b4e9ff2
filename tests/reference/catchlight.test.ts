import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { eyeLight, type EyeMirrors } from '../../shared-core/picture/eyes.ts'
import { platesBetween } from '../../shared-core/picture/platesBetween.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { SceneLight, ScenePiece } from '../../shared-core/set/scene.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { aLight, aPiece, at, studioScene } from '../core/studioScene.ts'
import { layerFor, samplesOf } from './pictureOf.ts'

/** Fresnel straight ahead at the tear film: ((1.376 - 1) / (1.376 + 1))^2. */
const MIRRORED = (0.376 / 2.376) ** 2
const softbox = { kind: 'softbox', widthMetres: 1.2, heightMetres: 0.9, depthMetres: 0.5, diffusers: 2 } as const

/** One sample of an eye at the origin's height that mirrors all its four rays one way. */
function mirrorTowards(x: number, y: number, z: number): EyeMirrors {
  const size = Math.hypot(x, y, z)
  const ray = [0, 0, 1.6, x / size, y / size, z / size, MIRRORED, 0]
  return { count: 1, rays: Float64Array.from([...ray, ...ray, ...ray, ...ray]) }
}

const frontsOf = (changes: Partial<SceneLight>) =>
  builtSet(studioScene({ lights: [aLight('x', { place: at(0, -1.5, 1.6), aim: at(0, 0, 1.6), ...changes })] })).lights.get('x')!.emitters

describe('a catchlight', () => {
  it('of an even diffuser is as bright as the white that receives its exitance: pi L = M (Lambert)', () => {
    const [seen] = eyeLight(mirrorTowards(0, -1, 0), frontsOf({ modifier: softbox }), [])
    // Share of the bare tube's flux that leaves such a box; see photometry/modifier.
    const exitance = 0.35 / (1.2 * 0.9)
    expect(seen! / (MIRRORED * exitance)).toBeCloseTo(1, 6)
  })

  it('ends where the front ends', () => {
    const fronts = frontsOf({ modifier: softbox })
    const at = (x: number, z: number): number => eyeLight(mirrorTowards(x, -1.5, z), fronts, [])[0]!
    expect([at(0.59, 0), at(-0.59, 0), at(0, 0.44), at(0, -0.44)].every((light) => light > 0)).toBe(true)
    expect([at(0.61, 0), at(-0.61, 0), at(0, 0.46), at(0, -0.46)]).toEqual([0, 0, 0, 0])
    expect(eyeLight(mirrorTowards(0, 1, 0), fronts, [])[0]).toBe(0)
  })
  it('of a bare tube is a small bright disc: the flux over the area of a ball', () => {
    const tube = { kind: 'bare-tube', widthMetres: 0.06, heightMetres: 0.06, depthMetres: 0.1, diffusers: 0 } as const
    const at = (x: number): number => eyeLight(mirrorTowards(x, -1.5, 0), frontsOf({ modifier: tube }), [])[0]!
    expect(at(0) / (MIRRORED / (4 * Math.PI * 0.03 * 0.03))).toBeCloseTo(1, 6)
    expect(at(0.029)).toBe(at(0))
    expect(at(0.032)).toBe(0)
  })

  it('is not seen past a flag; it is beside it and before it', () => {
    const seenPast = (piece: Partial<ScenePiece>, x = 0): number => {
      const flag = aPiece('f', { kind: 'flag', place: at(0.3, -0.8, 1.6), facingDegrees: 0, widthMetres: 0.6, heightMetres: 0.6, ...piece })
      const scene = studioScene({ lights: [aLight('x', { place: at(0, -1.5, 1.6), aim: at(0, 0, 1.6), modifier: softbox })], pieces: [flag] })
      const set = builtSet(scene)
      const light = set.lights.get('x')!
      const { plates } = platesBetween(set, light.index, light.emitters[0]!, [0, 0, 1.6], 0.3)
      return eyeLight(mirrorTowards(x, -1.5, 0), light.emitters, plates)[0]!
    }
    const open = seenPast({ place: at(2, 2, 1.6) })
    expect(open).toBeGreaterThan(0)
    // The flag reaches from 0 to 0.6 m at 0.8 m: at 1.5 m it hides all that is camera right of the middle.
    expect(seenPast({}, 0.02)).toBe(0)
    expect(seenPast({}, 0.5)).toBe(0)
    expect(seenPast({}, -0.02)).toBe(open)
    expect(seenPast({ place: at(0.3, -1.7, 1.6) }, 0.3)).toBe(open)
  })
  it('in the picture goes with a flag before the light and stays with a scrim before it', () => {
    const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
    const eyesPast = (pieces: readonly ScenePiece[]): number => {
      const scene = studioScene({ lights: [aLight('x', { place: at(0, -1.7, 2), aim: at(0, 0, 1.6), modifier: softbox })], pieces })
      return layerFor(scene, samplesOf(scene, asset, 360, 480), 'x').eyes.reduce((sum, light) => sum + light, 0)
    }
    const between = { place: at(0, -0.8, 1.8), facingDegrees: 0, widthMetres: 1.6, heightMetres: 1.6 }
    const open = eyesPast([])
    expect(open).toBeGreaterThan(0)
    expect(eyesPast([aPiece('f', { ...between, kind: 'flag' })])).toBe(0)
    expect(eyesPast([aPiece('s', { ...between, kind: 'scrim', transmittance: 0.5 })])).toBe(open)
  })
})
