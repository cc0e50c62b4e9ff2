import { add, cross, direction, distance, dot, scale, subtract, type Vector } from '../arithmetic/vector.ts'
import { degreesFromRadians } from '../arithmetic/portable.ts'
import type { Look, Piece } from '../plan/schema/look.ts'
import { newId } from '../plan/newId.ts'
import { usualPieces } from '../plan/usual/pieces.ts'
import type { AreaPrediction } from '../predict/prediction.ts'
import { cameraView, framePositionOf, isInFrame, type CameraView } from '../set/camera.ts'
import { panelCorners, panelsOf } from '../set/panels.ts'
import type { Candidate } from './cureCandidates.ts'

/** Black flags of every grip case, in metres (common practice, no source). */
const SIZES = [[0.45, 0.6], [0.6, 0.9]] as const
/** Along the way from the front to the area, and aside from it away from the place the light serves. */
const ALONG = [0.25, 0.4, 0.55, 0.7, 0.85]
const ASIDE_METRES = [0, 0.12, 0.24, 0.36]
/** As close to a person as anybody would put a flag, and to the front of a light (common practice, no source). */
const FROM_SUBJECT_METRES = 0.4
const FROM_FRONT_METRES = 0.25
/** As the fit checks have it: nothing within this share of the frame's edge. */
const FRAME_MARGIN = 0.05

interface FlagParts {
  readonly lookId: string
  readonly look: Look
  readonly front: Vector
  readonly area: Pick<AreaPrediction, 'place' | 'label'>
  readonly serves: Vector
  readonly letter: string
}

/** Flags across the way from a light's front to an area: square to it, out of the frame, clear of subject and front. */
export function flagCandidates({ lookId, look, front, area, serves, letter }: FlagParts): Candidate[] {
  const view = cameraView(look.camera)
  const path = subtract(area.place, front)
  const along = direction(path)
  const away = awayFrom(along, subtract(serves, front))
  const subject: Vector = [look.subject.xMetres, look.subject.yMetres, 0]
  return SIZES.flatMap(([widthMetres, heightMetres]) => ALONG.flatMap((share) => ASIDE_METRES.flatMap((aside): Candidate[] => {
    const place = add(add(front, scale(path, share)), scale(away, aside))
    const piece = flag(place, scale(along, -1), widthMetres, heightMetres, `${letter} off the ${area.label}`)
    const onFloor: Vector = [place[0], place[1], 0]
    if (distance(place, front) < FROM_FRONT_METRES || distance(onFloor, subject) < FROM_SUBJECT_METRES) return []
    if (isFlagInFrame(view, piece)) return []
    return [{
      kind: 'flag', title: `${piece.label}, at ${whereWords(place)}`, cost: 'one flag on a stand',
      keepsLevel: true, mayShift: null,
      edit: { name: 'cureSpill', changes: [{ path: ['looks', lookId, 'pieces', newId()], set: piece }] },
    }]
  })))
}

/** Square to the way, and away from where the light is needed; downwards where both lie on one line. */
function awayFrom(along: Vector, toServed: Vector): Vector {
  const across = subtract(toServed, scale(along, dot(toServed, along)))
  return direction(scale(across, -1), direction(cross(along, [1, 0, 0]), [0, 0, -1]))
}

function flag(place: Vector, [nx, ny, nz]: Vector, widthMetres: number, heightMetres: number, purpose: string): Piece {
  const toCentimetre = (metres: number): number => Math.round(metres * 100) / 100 || 0
  const [xMetres, yMetres, zMetres] = [toCentimetre(place[0]), toCentimetre(place[1]), toCentimetre(Math.max(place[2], heightMetres / 2))]
  return {
    ...usualPieces.flag, kind: 'flag', label: `Black flag ${widthMetres * 100} × ${heightMetres * 100}, ${purpose}`,
    place: { xMetres, yMetres, zMetres }, widthMetres, heightMetres,
    facingDegrees: Math.round(degreesFromRadians(Math.atan2(nx, -ny))),
    tiltDegrees: Math.round(degreesFromRadians(Math.asin(Math.min(Math.max(nz, -1), 1)))),
  }
}

function isFlagInFrame(view: CameraView, piece: Piece): boolean {
  return panelsOf({ id: '', ...piece }).flatMap((panel) => [panel.centre, ...panelCorners(panel)])
    .some((corner) => isInFrame(framePositionOf(view, corner), FRAME_MARGIN))
}

/** "0.62 m camera right, 0.40 m behind the T, 1.70 high" */
function whereWords([x, y, z]: Vector): string {
  const side = `${Math.abs(x).toFixed(2)} m camera ${x < 0 ? 'left' : 'right'}`
  const depth = `${Math.abs(y).toFixed(2)} m ${y < 0 ? 'in front of' : 'behind'} the T`
  return `${side}, ${depth}, ${Math.max(z, 0).toFixed(2)} m high`
}
