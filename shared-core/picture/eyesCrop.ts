import { dot, subtract } from '../arithmetic/vector.ts'
import { framePositionOf, isInFrame, type CameraView } from '../set/camera.ts'
import type { FrameCrop } from '../set/scene.ts'
import { eyeballOf } from '../subject/field/subjectField.ts'
import { headPlaceInSet, type PosedSubject } from './posedSubject.ts'

/** Room left and right of the eyes, so that both are seen whole: the crop is at least this many times as wide as they lie apart. */
const LEAST_WIDTH_OF_SPAN = 1.9

/**
 * The part of the Frame around the eyes. Null when neither eye looks out of the Frame.
 * @param view of the whole Frame
 * @param width,height of the part wanted, as shares of the Frame; both grow when the eyes lie too far apart for it
 */
export function eyesCrop(subject: PosedSubject, view: CameraView, width: number, height: number): FrameCrop | null {
  const eyes = ([-1, 1] as const).flatMap((side) => {
    const { centre, corneaCentre } = eyeballOf(side)
    const place = headPlaceInSet(subject, corneaCentre)
    const looks = subtract(place, headPlaceInSet(subject, centre))
    const position = framePositionOf(view, place)
    return dot(looks, subtract(view.place, place)) > 0 && isInFrame(position) ? [position] : []
  })
  if (eyes.length === 0) return null
  const [left, right] = [Math.min(...eyes.map(({ frameX }) => frameX)), Math.max(...eyes.map(({ frameX }) => frameX))]
  const middleY = eyes.reduce((sum, { frameY }) => sum + frameY, 0) / eyes.length
  const grows = Math.max(1, (LEAST_WIDTH_OF_SPAN * (right - left)) / width)
  return {
    left: (left + right) / 2 - (grows * width) / 2, top: middleY - (grows * height) / 2, width: grows * width, height: grows * height,
  }
}
