import { dot, scale, subtract, direction, type Vector } from '../arithmetic/vector.ts'
import { angularProfile, profileAt } from '../photometry/angularProfile.ts'
import { sightThrough, type CameraView } from '../set/camera.ts'
import type { Emitter } from '../set/emitter.ts'
import { fresnelReflectance } from '../spectra/surface/fresnel.ts'
import { cellOf } from '../subject/asset/octahedron.ts'
import { isBlocked } from '../subject/asset/selfShadow.ts'
import { eyeballOf } from '../subject/field/subjectField.ts'
import { distanceToFront, distanceToTube, isPlateMet } from './mirroredRay.ts'
import type { Plate } from './platesBetween.ts'
import { headPlaceInSet, toRest, type PosedSubject } from './posedSubject.ts'

/** Rays an eye sample is mirrored by, so that a catchlight has an edge and not steps. */
const RAYS = 4
const JITTER: readonly (readonly [number, number])[] = [[-0.125, -0.125], [0.125, -0.125], [-0.125, 0.125], [0.125, 0.125]]
/** Refractive index of the tear film and cornea: 2.5 % straight ahead. */
const CORNEA_INDEX = 1.376

export interface EyeSamples {
  readonly count: number
  /** Ascending. */
  readonly pixels: Uint32Array
  /** Which of its pixel's four places, 0-3. */
  readonly quarters: Uint8Array
  readonly vertices: Uint32Array
  /** In the Frame, 0-1. */
  readonly frameX: Float32Array
  readonly frameY: Float32Array
}

/** Mirrored sights of the eyes, before any light: eight numbers a ray. */
export interface EyeMirrors {
  readonly count: number
  /** Place, direction, Fresnel reflectance, 0: by sample and ray. A ray that the subject blocks has reflectance 0. */
  readonly rays: Float64Array
}

export function eyeMirrors(samples: EyeSamples, subject: PosedSubject, view: CameraView, width: number, height: number): EyeMirrors {
  const rays = new Float64Array(8 * RAYS * samples.count)
  const spheres = ([-1, 1] as const).flatMap((side) => {
    const { centre, radius, corneaCentre, corneaRadius } = eyeballOf(side)
    return [{ at: centre, size: radius }, { at: corneaCentre, size: corneaRadius }]
  }).map(({ at, size }) => ({ centre: headPlaceInSet(subject, at), radius: size * subject.scale }))
  const rest = toRest(subject, 1)
  for (let s = 0; s < samples.count; s++) {
    JITTER.forEach(([jx, jy], k) => {
      const sight = sightThrough(view, samples.frameX[s]! + jx / width, samples.frameY[s]! + jy / height)
      const hit = nearestHit(view.place, sight, spheres)
      if (hit === null) return
      const { place, normal } = hit
      const facing = -dot(sight, normal)
      const mirrored = subtract(sight, scale(normal, -2 * facing))
      const cell = cellOf(dot(rest[0], mirrored), dot(rest[1], mirrored), dot(rest[2], mirrored))
      const reflectance = isBlocked(subject.asset.selfShadow, samples.vertices[s]!, cell) ? 0 : fresnelReflectance(facing, CORNEA_INDEX)
      rays.set([...place, ...mirrored, reflectance, 0], 8 * (RAYS * s + k))
    })
  }
  return { count: samples.count, rays }
}

interface Sphere {
  readonly centre: Vector
  readonly radius: number
}

function nearestHit(from: Vector, sight: Vector, spheres: readonly Sphere[]): { place: Vector, normal: Vector } | null {
  let nearest = Infinity
  let met: Sphere | null = null
  for (const sphere of spheres) {
    const to = subtract(sphere.centre, from)
    const along = dot(to, sight)
    const inside = sphere.radius * sphere.radius - (dot(to, to) - along * along)
    if (inside < 0) continue
    const distance = along - Math.sqrt(inside)
    if (distance < nearest) [nearest, met] = [distance, sphere]
  }
  if (met === null) return null
  const place: Vector = [from[0] + nearest * sight[0], from[1] + nearest * sight[1], from[2] + nearest * sight[2]]
  return { place, normal: direction(subtract(place, met.centre)) }
}

/**
 * What each eye sample mirrors of a light's fronts: the exposure of a perfect white that would look the same.
 * @param solid flat things that may stand before the fronts; a cloth that lets light through is not among them
 */
export function eyeLight(mirrors: EyeMirrors, emitters: readonly Emitter[], solid: readonly Plate[]): Float32Array {
  const out = new Float32Array(mirrors.count)
  for (const emitter of emitters) {
    const profile = angularProfile(emitter.front.lobeExponent, emitter.front.grid)
    const isTube = emitter.front.shape === 'sphere'
    for (let r = 0; r < RAYS * mirrors.count; r++) {
      const reflectance = mirrors.rays[8 * r + 6]!
      if (reflectance === 0) continue
      const ray = mirrors.rays.subarray(8 * r, 8 * r + 6)
      const distance = isTube ? distanceToTube(emitter, ray) : distanceToFront(emitter, ray)
      if (distance === Infinity || solid.some((plate) => isPlateMet(plate, ray, distance))) continue
      const { axis } = emitter
      // A tube has the same radiance from everywhere.
      const share = isTube ? 1 : profileAt(profile, -(ray[3]! * axis[0] + ray[4]! * axis[1] + ray[5]! * axis[2]))
      const s = (r / RAYS) | 0
      out[s] = out[s]! + (Math.PI * emitter.axialRadiancePerLumenSecond * share * reflectance) / RAYS
    }
  }
  return out
}
