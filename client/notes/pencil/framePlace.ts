import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Pin, RestPlace } from '../../../shared-core/notes/pin.ts'
import { restPlaceInSet } from '../../../shared-core/picture/restPlace.ts'
import type { Look } from '../../../shared-core/plan/schema/look.ts'
import { cameraView, framePositionOf } from '../../../shared-core/set/camera.ts'
import { subjectAreas } from '../../../shared-core/subject/areas/subjectAreas.ts'

/** 0-1 from the left and the top inside the Frame. */
export interface FramePlace {
  readonly frameX: number
  readonly frameY: number
}

/** Areas further from a place than this are no words for it. */
const NEAR_AREA_METRES = 0.045

export const vectorOfRest = ({ xMetres, yMetres, zMetres }: RestPlace): Vector => [xMetres, yMetres, zMetres]
export const restOfVector = ([xMetres, yMetres, zMetres]: Vector): RestPlace => ({ xMetres, yMetres, zMetres })

/** Where places of the subject's surface fall in a look's Frame; null for those behind the camera. */
export function framePlacesOf({ camera, subject }: Pick<Look, 'camera' | 'subject'>, places: readonly Vector[]): readonly (FramePlace | null)[] {
  const view = cameraView(camera)
  return places.map((place) => {
    const { frameX, frameY, depthMetres } = framePositionOf(view, restPlaceInSet(subject, place))
    return depthMetres > 0 ? { frameX, frameY } : null
  })
}

/** Where a pin falls in the Frame; null for what hangs elsewhere or lies behind the camera. */
export function framePlaceOfPin(
  pin: Pin, look: Pick<Look, 'camera' | 'subject'>,
  areas: readonly { readonly id: string; readonly inFrame: boolean; readonly frameX: number; readonly frameY: number }[],
): FramePlace | null {
  if (pin.on === 'subject') return framePlacesOf(look, [vectorOfRest(pin.place)])[0] ?? null
  if (pin.on === 'frame') return { frameX: pin.xShare, frameY: pin.yShare }
  if (pin.on !== 'colour') return null
  const area = areas.find(({ id }) => id === pin.areaId)
  return area?.inFrame === true ? { frameX: area.frameX, frameY: area.frameY } : null
}

export function isInsideFrame({ frameX, frameY }: FramePlace): boolean {
  return frameX >= 0 && frameX <= 1 && frameY >= 0 && frameY <= 1
}

/** The named area nearest to a place at rest; null where there is none near. */
export function nearestAreaId(place: Vector): string | null {
  let nearest: { readonly id: string; readonly metres: number } | null = null
  for (const { id, place: [x, y, z] } of subjectAreas) {
    const [dx, dy, dz] = [x - place[0], y - place[1], z - place[2]]
    const metres = Math.sqrt(dx * dx + dy * dy + dz * dz)
    if (metres < NEAR_AREA_METRES && (nearest === null || metres < nearest.metres)) nearest = { id, metres }
  }
  return nearest?.id ?? null
}
