import type { Vector } from '../arithmetic/vector.ts'
import { restPlaceInSet } from '../picture/restPlace.ts'
import type { Look } from '../plan/schema/look.ts'
import { cameraView, framePositionOf } from '../set/camera.ts'
import { eyeballOf } from '../subject/field/subjectField.ts'

export type LandmarkId = 'eye-left' | 'eye-right' | 'mouth'

/** A point that anybody finds on a face, and where the prediction has it: 0-1 from the left and the top of the Frame. */
export interface Landmark {
  readonly id: LandmarkId
  readonly label: string
  readonly frameX: number
  readonly frameY: number
}

/** The middle of the line where the lips meet, at rest (subject/field/mouth.ts). */
const MOUTH: Vector = [0, -0.1, 1.5494]

/**
 * The three points by which a photograph is laid on the prediction: both pupils and the middle of the mouth. Left and
 * right are the camera's. They may lie outside 0-1.
 */
export function landmarksOf({ camera, subject }: Pick<Look, 'camera' | 'subject'>): readonly [Landmark, Landmark, Landmark] {
  const view = cameraView(camera)
  const landmark = (id: LandmarkId, label: string, rest: Vector): Landmark => {
    const { frameX, frameY } = framePositionOf(view, restPlaceInSet(subject, rest))
    return { id, label, frameX, frameY }
  }
  const pupil = (side: -1 | 1): Vector => {
    const { corneaCentre: [x, y, z], corneaRadius } = eyeballOf(side)
    return [x, y - corneaRadius, z]
  }
  return [
    landmark('eye-left', 'pupil at camera left', pupil(-1)),
    landmark('eye-right', 'pupil at camera right', pupil(1)),
    landmark('mouth', 'middle of the mouth', MOUTH),
  ]
}
