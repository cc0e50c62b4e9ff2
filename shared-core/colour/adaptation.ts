import { applyMatrix, invertMatrix, multiplyMatrices, type Matrix3 } from './matrix.ts'
import type { Xyz } from './triples.ts'

/**
 * Cone-like spaces in which a change of white is a scaling.
 * Bradford: Lam 1985, as used by the ICC. CAT16: Li et al., Color Research and Application 42 (2017).
 */
export const ADAPTATION_CONES: Readonly<Record<'bradford' | 'cat16', Matrix3>> = {
  bradford: [
    [0.8951, 0.2664, -0.1614],
    [-0.7502, 1.7135, 0.0367],
    [0.0389, -0.0685, 1.0296],
  ],
  cat16: [
    [0.401288, 0.650173, -0.051461],
    [-0.250268, 1.204414, 0.045854],
    [-0.002079, 0.048952, 0.953127],
  ],
}

/**
 * The matrix that turns XYZ seen under one white into XYZ of the same look under another, adaptation complete.
 * The source white goes exactly onto the destination white.
 * @param toWhite, fromWhite XYZ with Y = 1.
 */
export function adaptationMatrix(toWhite: Xyz, fromWhite: Xyz, cones: keyof typeof ADAPTATION_CONES): Matrix3 {
  const toCones = ADAPTATION_CONES[cones]
  const from = applyMatrix(toCones, fromWhite)
  const to = applyMatrix(toCones, toWhite)
  const gains: Matrix3 = [
    [to[0] / from[0], 0, 0],
    [0, to[1] / from[1], 0],
    [0, 0, to[2] / from[2]],
  ]
  return multiplyMatrices(invertMatrix(toCones), multiplyMatrices(gains, toCones))
}
