import { polygonView, viewPolygon } from '../photometry/polygon.ts'
import type { Occluders } from '../set/occluders.ts'
import { cellOf } from '../subject/asset/octahedron.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import { toRest, type PosedSubject } from './posedSubject.ts'
import type { Shine } from './shine.ts'
import type { Sheen } from './material.ts'

/** What a light does to the vertices that the camera sees, for one lumen-second of the bare tube. */
export interface SurfaceLight {
  /** Exposure on the surface, in 1/m2; by vertex, 0 for vertices not asked for. */
  readonly direct: Float32Array
  /** What the surface mirrors to the camera, as the exposure of a perfect white that would look the same. */
  readonly sheen: Float32Array
}

/** Reflectance of skin straight ahead, refractive index 1.4: ((n - 1) / (n + 1))^2. */
const FACING_REFLECTANCE = 0.0278
/** Head weights are told apart in so many steps when a direction is turned back to rest. */
const TURN_STEPS = 16

/**
 * Light of one shine on the given vertices, added to `into`.
 *
 * Irradiance is the closed form of the front times the ratio that angle and shadow make of it at the fixed points; the
 * subject's shadow on itself is looked up in its precomputed directions. Sheen is summed over the same points.
 * @param vertices indices of the vertices wanted
 * @param sheens by mesh material
 * @param plates everything but the subject that stands in light's way
 * @param eye place of the camera
 */
export function addSurfaceLight(
  into: SurfaceLight, shine: Shine, subject: PosedSubject, vertices: Uint32Array, sheens: readonly Sheen[], plates: Occluders,
  eye: readonly [number, number, number],
): void {
  const { positions, normals, headWeights } = subject
  const { selfShadow, materials } = subject.asset
  const turns = Array.from({ length: TURN_STEPS + 1 }, (_, i) => toRest(subject, i / TURN_STEPS).flat())
  const [ax, ay, az] = shine.axis
  const [cx, cy, cz] = shine.centre
  const { count, xyz, strength, emitter } = shine
  const profile = shine.profileAt
  for (let i = 0; i < vertices.length; i++) {
    const vertex = vertices[i]!
    const px = positions[3 * vertex]!
    const py = positions[3 * vertex + 1]!
    const pz = positions[3 * vertex + 2]!
    const nx = normals[3 * vertex]!
    const ny = normals[3 * vertex + 1]!
    const nz = normals[3 * vertex + 2]!
    if ((px - cx) * ax + (py - cy) * ay + (pz - cz) * az <= 0) continue
    const toCentre = (cx - px) * nx + (cy - py) * ny + (cz - pz) * nz
    if (toCentre < -shine.radiusMetres) continue
    const blockers = plates.consider(px, py, pz, cx, cy, cz, shine.radiusMetres, shine.owner)
    const m = turns[Math.round(headWeights[vertex]! * TURN_STEPS)]!
    const { alpha, strength: sheenStrength } = sheens[materials[vertex]!]!
    const alpha2 = alpha * alpha
    let vx = eye[0] - px
    let vy = eye[1] - py
    let vz = eye[2] - pz
    const away = 1 / Math.sqrt(vx * vx + vy * vy + vz * vz)
    vx *= away
    vy *= away
    vz *= away
    const nv = Math.max(0.02, nx * vx + ny * vy + nz * vz)
    const smithV = Math.sqrt(nv * nv * (1 - alpha2) + alpha2)
    const words = vertex * WORDS
    let open = 0
    let lit = 0
    let mirrored = 0
    for (let k = 0; k < count; k++) {
      const sx = xyz[3 * k]!
      const sy = xyz[3 * k + 1]!
      const sz = xyz[3 * k + 2]!
      const x = sx - px
      const y = sy - py
      const z = sz - pz
      const inverseSquare = 1 / (x * x + y * y + z * z)
      const inverse = Math.sqrt(inverseSquare)
      const nl = (x * nx + y * ny + z * nz) * inverse
      if (nl <= 0) continue
      const cosAtFront = -(x * ax + y * ay + z * az) * inverse
      if (cosAtFront <= 0) continue
      const weight = cosAtFront * inverseSquare * strength[k]!
      open += weight * nl
      const cell = cellOf(m[0]! * x + m[1]! * y + m[2]! * z, m[3]! * x + m[4]! * y + m[5]! * z, m[6]! * x + m[7]! * y + m[8]! * z)
      if ((selfShadow[words + (cell >> 5)]! >>> (cell & 31)) & 1) continue
      let given = profile === null ? weight : weight * profile(cosAtFront)
      if (blockers > 0) given *= plates.visibleShare(sx, sy, sz, 0.05)
      if (given <= 0) continue
      lit += given * nl
      // GGX with Smith's joint masking (Walter et al. 2007; Heitz 2014), Fresnel after Schlick 1994.
      const lx = x * inverse + vx
      const ly = y * inverse + vy
      const lz = z * inverse + vz
      const halfInverse = 1 / Math.sqrt(lx * lx + ly * ly + lz * lz)
      const nh = (nx * lx + ny * ly + nz * lz) * halfInverse
      const vh = (vx * lx + vy * ly + vz * lz) * halfInverse
      const spread = nh * nh * (alpha2 - 1) + 1
      const one = 1 - vh
      const fresnel = FACING_REFLECTANCE + (1 - FACING_REFLECTANCE) * one * one * one * one * one
      const masking = 0.5 / (nl * smithV + nv * Math.sqrt(nl * nl * (1 - alpha2) + alpha2))
      mirrored += given * nl * ((alpha2 / (spread * spread)) * masking * fresnel)
    }
    if (open <= 0) continue
    const exact = emitter ? closedForm(emitter, px, py, pz, nx, ny, nz) / open : 1
    into.direct[vertex] = into.direct[vertex]! + lit * exact
    // pi x radiance, and GGX's own 1/pi: they cancel.
    into.sheen[vertex] = into.sheen[vertex]! + mirrored * exact * sheenStrength
  }
}

function closedForm(
  emitter: NonNullable<Shine['emitter']>, px: number, py: number, pz: number, nx: number, ny: number, nz: number,
): number {
  if (emitter.front.shape === 'sphere') {
    const dx = emitter.centre[0] - px
    const dy = emitter.centre[1] - py
    const dz = emitter.centre[2] - pz
    const square = dx * dx + dy * dy + dz * dz
    const facing = (dx * nx + dy * ny + dz * nz) / Math.sqrt(square)
    return facing <= 0 ? 0 : (emitter.front.fluxShare * facing) / (4 * Math.PI * square)
  }
  viewPolygon(emitter.corners, emitter.outline.length, px, py, pz, nx, ny, nz)
  return emitter.axialRadiancePerLumenSecond * polygonView.aboveHorizon
}
