import { z } from 'zod'
import { shortText } from '../plan/schema/quantities.ts'
import { sha256Hex } from './quantities.ts'

/** How many steps a wedge has at either end. */
export const WEDGE_STEPS = 12
const wedgeSteps = z.number().int().min(0).max(WEDGE_STEPS)

/** What somebody saw on their screen before judging colour on it. All of it is their word; nothing is measured. */
export const screenResultSchema = z.strictObject({
  /** The check was looked at on a neutral surround, with nothing coloured beside it. */
  neutralSurround: z.boolean(),
  /** Steps told apart at the dark and at the light end of the wedge. */
  darkStepsSeen: wedgeSteps,
  lightStepsSeen: wedgeSteps,
  /** The hue patches in the order they were put: numbers as the screen dealt them, each once. */
  hueOrder: z.array(z.number().int().min(0).max(15)).max(16).refine((order) => new Set(order).size === order.length, 'each patch once'),
  /** The screen is tinted warm for the evening. */
  nightTint: z.boolean(),
  tooDim: z.boolean(),
  /** A photograph of the posted swatch beside the screen, as the relay keeps it: the other way to check. */
  swatchPhotoHash: sha256Hex.nullable(),
  /** What kind of screen, in the person's words. */
  screenWords: shortText,
})
export type ScreenResult = z.infer<typeof screenResultSchema>
