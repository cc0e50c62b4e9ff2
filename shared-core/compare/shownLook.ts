import { labDifference2000, type Lab } from '../colour/difference.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { LookPicture, type PictureRequest } from '../predict/lookPicture.ts'
import { createPredictor } from '../predict/predict.ts'
import type { Prediction } from '../predict/prediction.ts'
import type { FrameCrop } from '../set/scene.ts'
import type { SubjectAsset } from '../subject/asset/format.ts'
import { frameColours, shownColour, type FrameColours } from './frameColours.ts'
import { exceededBy, meanOf, movedDifferences, pixelDifferences, SMALLEST_PART } from './frameDifference.ts'

/** How differently two looks look. */
export interface FrameDifference {
  /** Mean CIEDE2000 over all pixels of the Frame. */
  readonly mean: number
  /**
   * CIEDE2000 where it shows most, so that what changes in one place only is not lost in the mean: the most of what
   * SMALLEST_PART of the Frame exceeds, of the named areas (lips are less than that part), and of the eyes.
   */
  readonly greatest: number
}

/** A look as a display shows it: the Frame, the eyes, and the named areas that are in it. */
export interface ShownLook {
  readonly frame: FrameColours
  /** Null where no eye is seen. */
  readonly eyes: FrameColours | null
  readonly areas: ReadonlyMap<string, Lab>
  readonly prediction: Prediction
}

export interface ShownDifference extends FrameDifference {
  /** Name of the area whose colour differs most; null where none that is in both differs. */
  readonly mostAt: string | null
}

/** Small enough to be quick, large enough that SMALLEST_PART of it is some forty pixels. */
export const COMPARED_WIDTH_PIXELS = 72
/** About twice as fine as the Frame is compared, at the eyes' size in a head and shoulders: a catchlight is a pixel. */
export const EYES_PIXELS = { width: 40, height: 16 } as const
/** Of the part around the eyes: three catchlights' worth. Common practice, no source. */
export const SMALLEST_PART_OF_EYES = 0.005
/** Of the Frame's width at the least. */
const EYES_SHARE = 0.1

/** Draws states of one look that differ by little, all at one size. */
export class LookShower {
  private readonly picture: LookPicture
  private readonly closer: LookPicture
  private readonly predict = createPredictor()

  /**
   * @param height of every Frame: one that the camera crops otherwise is compared drawn out over it
   * @param eyes the part of the Frame where the eyes are looked at, the same for all
   */
  constructor(asset: SubjectAsset, private readonly lookId: string, private readonly height: number, private readonly eyes: FrameCrop | null) {
    this.picture = new LookPicture(asset)
    this.closer = new LookPicture(asset)
  }

  show(plan: Plan): ShownLook {
    const whole = { width: COMPARED_WIDTH_PIXELS, height: this.height, soloLightId: null, coarse: false }
    const prediction = this.predict(plan, this.lookId)
    const { camera, finish } = plan.looks[this.lookId]!
    const areas = prediction.areas.filter(({ inFrame }) => inFrame).map(({ label, colour }) =>
      [label, shownColour(colour.channels, camera.whiteBalanceKelvin, finish)] as const)
    return {
      prediction, areas: new Map(areas),
      frame: this.draw(this.picture, plan, whole),
      eyes: this.eyes && this.draw(this.closer, plan, { ...whole, ...EYES_PIXELS, crop: this.eyes }),
    }
  }

  private draw(picture: LookPicture, plan: Plan, request: PictureRequest): FrameColours {
    const drawn = picture.draw(plan, this.lookId, request)
    return frameColours(drawn, picture.parts(plan, this.lookId, request).development)
  }
}

/** The part of a look's Frame around the eyes, of the shape of EYES_PIXELS; null where no eye is seen. */
export function eyesOf(plan: Plan, lookId: string, asset: SubjectAsset): FrameCrop | null {
  const { sensorWidthMillimetres, sensorHeightMillimetres } = plan.looks[lookId]!.camera
  const height = (EYES_SHARE * sensorWidthMillimetres * EYES_PIXELS.height) / (sensorHeightMillimetres * EYES_PIXELS.width)
  return new LookPicture(asset).eyesCrop(plan, lookId, EYES_SHARE, height)
}

/** @throws RangeError when the Frames are not of one size */
export function shownDifference(one: ShownLook, other: ShownLook): ShownDifference {
  const frame = pixelDifferences(one.frame, other.frame)
  const inEyes = one.eyes && other.eyes ? exceededBy(SMALLEST_PART_OF_EYES, movedDifferences(one.eyes, other.eyes, EYES_PIXELS.width)) : 0
  let [mostAt, inAreas]: [string | null, number] = [null, 0]
  for (const [label, was] of one.areas) {
    const is = other.areas.get(label)
    const difference = is === undefined ? 0 : labDifference2000(was, is)
    if (difference > inAreas) [mostAt, inAreas] = [label, difference]
  }
  return { mean: meanOf(frame), greatest: Math.max(exceededBy(SMALLEST_PART, frame), inAreas, inEyes), mostAt }
}
