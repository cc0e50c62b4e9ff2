import type { Vector } from '../arithmetic/vector.ts'
import { angularProfile, type AngularProfile } from '../photometry/angularProfile.ts'
import type { CellCount } from '../photometry/frontCells.ts'
import { type BuiltSet, type StandingLight } from '../set/builtSet.ts'
import type { Emitter } from '../set/emitter.ts'
import { emitterPoints } from '../set/emitterPoints.ts'
import type { PatchedPanel } from '../set/patches.ts'
import { landingOf } from '../transport/landing.ts'

/** Fixed points that stand for the cells of something flat that shines. */
export interface ShinePoints {
  readonly count: number
  readonly xyz: Float64Array
  /** Radiance straight ahead times area of each cell, or intensity of a tube; 1/sr for one lumen-second of the bare tube. */
  readonly strength: Float64Array
  readonly cellMetres: number
}

/** Something flat that shines on the subject by one light: its own front, or a piece that the light falls on. */
export interface Shine {
  readonly axis: Vector
  readonly centre: Vector
  readonly radiusMetres: number
  /** The front, where there is one: it has a closed form. */
  readonly emitter: Emitter | null
  /** Radiance by angle; null for a perfect diffuser. */
  readonly profile: AngularProfile | null
  readonly points: ShinePoints
  /** Fewer points for what is mirrored; null where that is too dim to draw. */
  readonly mirrored: ShinePoints | null
  /** Light that came back from a surface is drawn in another colour. */
  readonly isReturned: boolean
  /** The light whose own fronts do not block it; -1 for a piece. */
  readonly owner: number
}

/** How finely fronts are cut. */
export type Fineness = 'coarse' | 'full'

/**
 * All that shines by one light on a sphere around the subject: its fronts; scrims that pass it; boards, flats and
 * scrims that throw it back.
 * @param returns mean reflectance of a surface, by its id
 */
export function shinesOf(
  set: BuiltSet, light: StandingLight, middle: Vector, fineness: Fineness, returns: (surfaceId: string) => number,
): readonly Shine[] {
  const fronts = light.emitters.map((emitter) => frontShine(emitter, light.index, middle, fineness))
  return [...fronts, ...pieceShines(set, light, middle, returns)]
}

function frontShine(emitter: Emitter, owner: number, middle: Vector, fineness: Fineness): Shine {
  const away = distanceOf(emitter.centre, middle) / (2 * emitter.radiusMetres)
  const profile = angularProfile(emitter.front.lobeExponent, emitter.front.grid)
  return {
    axis: emitter.axis,
    centre: emitter.centre,
    radiusMetres: emitter.radiusMetres,
    emitter,
    profile: profile.isUniform ? null : profile,
    points: frontPoints(emitter, fineness === 'coarse' || away > 4 ? 16 : away > 0.7 ? 81 : 144),
    mirrored: frontPoints(emitter, 16),
    isReturned: false,
    owner,
  }
}

/** Cells of a front, their areas made to add up to the front's own. */
function frontPoints(emitter: Emitter, about: CellCount): ShinePoints {
  const { count, xyz, shares, cellWidthMetres, cellHeightMetres } = emitterPoints(emitter, about)
  let sum = 0
  for (const share of shares) sum += share
  // A bare tube gives its intensity instead: it shines alike all round.
  const whole = emitter.front.shape === 'sphere'
    ? emitter.front.fluxShare / (4 * Math.PI * sum) : (emitter.axialRadiancePerLumenSecond * emitter.areaSquareMetres) / sum
  return { count, xyz, strength: shares.map((share) => share * whole), cellMetres: Math.sqrt(cellWidthMetres * cellHeightMetres) }
}

function pieceShines(set: BuiltSet, light: StandingLight, middle: Vector, returns: (surfaceId: string) => number): Shine[] {
  const { surfaces, patches } = set
  const shines: Shine[] = []
  let patchExposure: Float64Array | null = null
  for (const patched of patches.panels) {
    const { id, transmittance } = surfaces[patched.surfaceIndex]!
    if (!id.startsWith('piece:') || !facesPlace(patched, middle)) continue
    patchExposure ??= landingOf(set.surroundings, light).patchExposure
    const returned = ((1 - transmittance) * returns(id)) / Math.PI
    add(shines, patchShine(patched, patches.centres, (i) => patchExposure![i]! * returned, true))
    if (transmittance === 0) continue
    add(shines, patchShine(patched, patches.centres, (i) => (patchExposure![patches.otherSide[i]!]! * transmittance) / Math.PI, false))
  }
  return shines
}

function add(shines: Shine[], shine: Shine | null): void {
  if (shine) shines.push(shine)
}

function facesPlace({ panel: { normal, centre } }: PatchedPanel, place: Vector): boolean {
  return (place[0] - centre[0]) * normal[0] + (place[1] - centre[1]) * normal[1] + (place[2] - centre[2]) * normal[2] > 0
}

const CLEARANCE_METRES = 0.002

function patchShine(
  { panel, first, columns, rows, patchAreaSquareMetres, radiusMetres, cellMetres }: PatchedPanel, centres: Float64Array,
  radianceOf: (patch: number) => number, isReturned: boolean,
): Shine | null {
  const count = columns * rows
  const strength = Float64Array.from({ length: count }, (_, i) => radianceOf(first + i) * patchAreaSquareMetres)
  if (strength.every((value) => value === 0)) return null
  // A little before the cloth, or it would stand in its own light.
  const xyz = centres.slice(3 * first, 3 * (first + count)).map((value, i) => value + panel.normal[i % 3]! * CLEARANCE_METRES)
  const points = { count, xyz, strength, cellMetres }
  return {
    axis: panel.normal, centre: panel.centre, radiusMetres, emitter: null, profile: null,
    points, mirrored: isReturned ? null : points, isReturned, owner: -1,
  }
}

function distanceOf(a: Vector, b: Vector): number {
  const [x, y, z] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
  return Math.sqrt(x * x + y * y + z * z)
}
