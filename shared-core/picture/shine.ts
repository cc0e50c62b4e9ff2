import type { Vector } from '../arithmetic/vector.ts'
import { angularProfile, profileAt } from '../photometry/angularProfile.ts'
import type { CellCount } from '../photometry/frontCells.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Emitter } from '../set/emitter.ts'
import { emitterPoints } from '../set/emitterPoints.ts'
import type { Panel } from '../set/panels.ts'
import type { Scene } from '../set/scene.ts'
import { lightAtPoint } from '../transport/lightAtPoint.ts'

/**
 * Something that shines on the subject, as fixed points: a light's own front, or a scrim lit from behind by it. Light
 * figures are for one lumen-second of the bare tube.
 */
export interface Shine {
  readonly axis: Vector
  readonly centre: Vector
  readonly radiusMetres: number
  /** Of the front in closed form, where there is one: the sum over the points is then scaled to it. */
  readonly emitter: Emitter | null
  readonly count: number
  readonly xyz: Float64Array
  /** Radiance times area of each point, before its angle; 1/sr. */
  readonly strength: Float64Array
  /** Radiance by angle; null for a perfect diffuser. */
  readonly profileAt: ((cosAngle: number) => number) | null
  /** The light whose own fronts do not block it; -1 for a scrim. */
  readonly owner: number
}

/** Points across a scrim. */
const SCRIM_CELLS = 7

/** All that shines by one light. */
export function shinesOf(scene: Scene, lightId: string, cells: CellCount): readonly Shine[] {
  const set = builtSet(scene)
  const light = set.lights.get(lightId)
  if (!light) return []
  return [
    ...light.emitters.map((emitter) => frontShine(emitter, light.index, cells)),
    ...set.surfaces.filter(({ transmittance }) => transmittance > 0).flatMap((surface) =>
      surface.panels.flatMap((panel) => scrimShine(scene, lightId, panel, surface.otherSideId ?? '', surface.transmittance))),
  ]
}

function frontShine(emitter: Emitter, owner: number, cells: CellCount): Shine {
  const points = emitterPoints(emitter, cells)
  const profile = angularProfile(emitter.front.lobeExponent, emitter.front.grid)
  const cellArea = points.cellWidthMetres * points.cellHeightMetres
  return {
    axis: emitter.axis,
    centre: emitter.centre,
    radiusMetres: emitter.radiusMetres,
    emitter,
    count: points.count,
    xyz: points.xyz,
    strength: points.shares.map((share) => share * cellArea * emitter.axialRadiancePerLumenSecond),
    profileAt: profile.isUniform ? null : (cosAngle) => profileAt(profile, cosAngle),
    owner,
  }
}

/** The side of a scrim that faces away from the light: each cell gives back what its far side receives. */
function scrimShine(scene: Scene, lightId: string, panel: Panel, farSideId: string, transmittance: number): readonly Shine[] {
  const count = SCRIM_CELLS * SCRIM_CELLS
  const xyz = new Float64Array(3 * count)
  const strength = new Float64Array(count)
  const cellArea = (4 * panel.halfWidthMetres * panel.halfHeightMetres) / count
  const away: Vector = [-panel.normal[0], -panel.normal[1], -panel.normal[2]]
  let isLit = false
  for (let i = 0; i < count; i++) {
    const u = (((i % SCRIM_CELLS) + 0.5) / SCRIM_CELLS * 2 - 1) * panel.halfWidthMetres
    const v = ((Math.floor(i / SCRIM_CELLS) + 0.5) / SCRIM_CELLS * 2 - 1) * panel.halfHeightMetres
    const place: Vector = [0, 1, 2].map((k) => panel.centre[k]! + u * panel.across[k]! + v * panel.up[k]!) as unknown as Vector
    xyz.set(place, 3 * i)
    const received = lightAtPoint(scene, lightId, { place, facing: away, surfaceId: farSideId }).direct.flat
    strength[i] = (received * transmittance * cellArea) / Math.PI
    if (received > 0) isLit = true
  }
  if (!isLit) return []
  return [{
    axis: panel.normal,
    centre: panel.centre,
    radiusMetres: Math.sqrt(panel.halfWidthMetres * panel.halfWidthMetres + panel.halfHeightMetres * panel.halfHeightMetres),
    emitter: null,
    count, xyz, strength,
    profileAt: null,
    owner: -1,
  }]
}
