import { describe, expect, it } from 'vitest'
import { FACES, opennessOf } from '../../shared-core/picture/openness.ts'
import { ballSubject } from './ballSubject.ts'

/**
 * A place in the open sees of even light, weighed by the cosine at its surface and by the squares of the direction's own
 * parts: by integration over the hemisphere, half straight ahead (the integral of cos^3 is pi/2 of pi), an eighth on each
 * of the four faces beside it, nothing behind. Between these, as n_x^2 goes, for the squares add up to 1.
 */
const ball = ballSubject(0.12, 1.6, 4)
const count = ball.positions.length / 3
const { faces } = opennessOf(ball, Uint32Array.from({ length: count }, (_, v) => v))
const facesOf = (v: number): readonly number[] => [...faces.subarray(FACES * v, FACES * (v + 1))]

function vertexFacing(normal: readonly [number, number, number]): number {
  let best = 0
  const along = (v: number): number => normal.reduce((sum, part, k) => sum + part * ball.normals[3 * v + k]!, 0)
  for (let v = 1; v < count; v++) if (along(v) > along(best)) best = v
  return best
}

describe('openness of a ball', () => {
  it.each<[string, readonly [number, number, number], number, number]>([
    ['right', [1, 0, 0], 0, 1], ['left', [-1, 0, 0], 1, 0], ['to the backdrop', [0, 1, 0], 2, 3], ['to the camera', [0, -1, 0], 3, 2],
    ['up', [0, 0, 1], 4, 5], ['down', [0, 0, -1], 5, 4],
  ])('of what faces %s', (_, normal, ahead, behind) => {
    facesOf(vertexFacing(normal)).forEach((share, face) => {
      // The ring nearest to a side leans by up to half a spoke: four degrees.
      expect(Math.abs(share - (face === ahead ? 0.5 : face === behind ? 0 : 0.125))).toBeLessThan(0.04)
    })
  })

  it('goes between two opposite faces together as 1/4 + n^2 / 4, and adds up to all there is', () => {
    for (let v = 0; v < count; v++) {
      const found = facesOf(v)
      expect(found.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 2)
      for (const axis of [0, 1, 2]) {
        const normal = ball.normals[3 * v + axis]!
        expect(Math.abs(found[2 * axis]! + found[2 * axis + 1]! - (1 + normal * normal) / 4)).toBeLessThan(0.02)
      }
    }
  })
})
