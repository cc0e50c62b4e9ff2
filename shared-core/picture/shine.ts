import { direction, subtract, type Vector } from '../arithmetic/vector.ts'
import { cosine, sine } from '../arithmetic/portable.ts'
import { angularProfile, type AngularProfile } from '../photometry/angularProfile.ts'
import type { CellCount } from '../photometry/frontCells.ts'
import { type BuiltSet, type StandingLight } from '../set/builtSet.ts'
import { frontAxes, type Emitter } from '../set/emitter.ts'
import { emitterPoints } from '../set/emitterPoints.ts'
import type { Panel } from '../set/panels.ts'
import type { PatchedPanel } from '../set/patches.ts'
import { landingOf } from '../transport/landing.ts'
import { frontRule } from './frontRule.ts'

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
  /** Shines alike all round, without a cosine at its own surface. */
  readonly isTube: boolean
  /** Radiance by angle; null for a perfect diffuser. */
  readonly profile: AngularProfile | null
  readonly points: ShinePoints
  /** Fewer points for where nothing is in the way but the horizon, and fewest where not even that is. */
  readonly cutPoints: ShinePoints
  readonly openPoints: ShinePoints
  /** Points for what is mirrored; null where that is too dim to draw. */
  readonly mirrored: ShinePoints | null
  /** Light that came back from a surface is drawn in another colour. */
  readonly isReturned: boolean
  /** A scrim, board or flat, and not the light's own front. */
  readonly isPiece: boolean
}

/**
 * Cells for what is mirrored, however far the front stands, so that no highlight jumps as a light is dragged. Even cells and
 * not the nodes of a rule: a lobe is widened by its cell, which only fits cells of one size that tile the front.
 */
const MIRRORED_CELLS = 12

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
  const fronts = light.emitters.map((emitter) => frontShine(emitter, middle, fineness))
  return [...fronts, ...pieceShines(set, light, middle, returns)]
}

function frontShine(emitter: Emitter, middle: Vector, fineness: Fineness): Shine {
  if (emitter.front.shape === 'sphere') return tubeShine(emitter, middle)
  const away = distanceOf(emitter.centre, middle) / (2 * emitter.radiusMetres)
  const profile = angularProfile(emitter.front.lobeExponent, emitter.front.grid)
  return {
    axis: emitter.axis,
    centre: emitter.centre,
    radiusMetres: emitter.radiusMetres,
    emitter,
    isTube: false,
    profile: profile.isUniform ? null : profile,
    points: frontPoints(emitter, fineness === 'coarse' || away > 4 ? 16 : away > 0.7 ? 81 : 144),
    cutPoints: frontPoints(emitter, fineness === 'coarse' || away > 4 ? 16 : 36),
    openPoints: frontRule(emitter, fineness === 'coarse' ? 'wide' : 'close'),
    mirrored: frontPoints(emitter, MIRRORED_CELLS),
    isReturned: false,
    isPiece: false,
  }
}

/** Points across a bare tube, to soften its shadows. */
const TUBE_POINTS = 7

/** A bare tube shines alike all round: a few points on the disc that the subject sees of it. */
function tubeShine({ centre, radiusMetres, front }: Emitter, middle: Vector): Shine {
  const axis = direction(subtract(middle, centre))
  const { across, up } = frontAxes(axis, 0)
  const xyz = new Float64Array(3 * TUBE_POINTS)
  for (let k = 0; k < TUBE_POINTS; k++) {
    const turn = (2 * Math.PI * k) / (TUBE_POINTS - 1)
    const out = k === TUBE_POINTS - 1 ? 0 : 0.75 * radiusMetres
    const [u, v] = [out * cosine(turn), out * sine(turn)]
    for (let i = 0; i < 3; i++) xyz[3 * k + i] = centre[i]! + u * across[i]! + v * up[i]!
  }
  const points: ShinePoints = {
    count: TUBE_POINTS, xyz, cellMetres: radiusMetres,
    strength: new Float64Array(TUBE_POINTS).fill(front.fluxShare / (4 * Math.PI * TUBE_POINTS)),
  }
  return { axis, centre, radiusMetres, emitter: null, isTube: true, profile: null, points, cutPoints: points, openPoints: points, mirrored: points, isReturned: false, isPiece: false }
}

/** Cells of a front, their areas made to add up to the front's own. */
function frontPoints(emitter: Emitter, about: CellCount): ShinePoints {
  const { count, xyz, shares, cellWidthMetres, cellHeightMetres } = emitterPoints(emitter, about)
  let sum = 0
  for (const share of shares) sum += share
  const whole = (emitter.axialRadiancePerLumenSecond * emitter.areaSquareMetres) / sum
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

function before({ normal }: Panel, [x, y, z]: Vector): Vector {
  return [x + normal[0] * CLEARANCE_METRES, y + normal[1] * CLEARANCE_METRES, z + normal[2] * CLEARANCE_METRES]
}

function patchShine(
  { panel, first, columns, rows, patchAreaSquareMetres, radiusMetres, cellMetres }: PatchedPanel, centres: Float64Array,
  radianceOf: (patch: number) => number, isReturned: boolean,
): Shine | null {
  const count = columns * rows
  const strength = Float64Array.from({ length: count }, (_, i) => radianceOf(first + i) * patchAreaSquareMetres)
  if (strength.every((value) => value === 0)) return null
  // A little before the cloth, or it would stand in its own light.
  const xyz = new Float64Array(3 * count)
  for (let i = 0; i < count; i++) {
    const k = 3 * (first + i)
    xyz.set(before(panel, [centres[k]!, centres[k + 1]!, centres[k + 2]!]), 3 * i)
  }
  const points = { count, xyz, strength, cellMetres }
  return {
    axis: panel.normal, centre: before(panel, panel.centre), radiusMetres, emitter: null, isTube: false, profile: null,
    points, cutPoints: points, openPoints: points, mirrored: isReturned ? null : points, isReturned, isPiece: true,
  }
}

function distanceOf(a: Vector, b: Vector): number {
  const [x, y, z] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
  return Math.sqrt(x * x + y * y + z * z)
}
