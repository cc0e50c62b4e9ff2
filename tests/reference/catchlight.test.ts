import { describe, expect, it } from 'vitest'
import { eyeLight, type EyeMirrors } from '../../shared-core/picture/eyes.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { SceneLight } from '../../shared-core/set/scene.ts'
import { aLight, at, studioScene } from '../core/studioScene.ts'

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
    const [seen] = eyeLight(mirrorTowards(0, -1, 0), frontsOf({ modifier: softbox }))
    // Share of the bare tube's flux that leaves such a box; see photometry/modifier.
    const exitance = 0.35 / (1.2 * 0.9)
    expect(seen! / (MIRRORED * exitance)).toBeCloseTo(1, 6)
  })

  it('ends where the front ends', () => {
    const fronts = frontsOf({ modifier: softbox })
    const at = (x: number, z: number): number => eyeLight(mirrorTowards(x, -1.5, z), fronts)[0]!
    expect([at(0.59, 0), at(-0.59, 0), at(0, 0.44), at(0, -0.44)].every((light) => light > 0)).toBe(true)
    expect([at(0.61, 0), at(-0.61, 0), at(0, 0.46), at(0, -0.46)]).toEqual([0, 0, 0, 0])
    expect(eyeLight(mirrorTowards(0, 1, 0), fronts)[0]).toBe(0)
  })
})
