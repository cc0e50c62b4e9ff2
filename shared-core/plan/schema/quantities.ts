import { z } from 'zod'

/** Bounded numbers and texts that the plan is made of. Bounds are wide enough for any studio and tight enough to draw. */

const finite = z.number().finite()

export const coordinateMetres = finite.min(-50).max(50)
export const sizeMetres = finite.min(0.01).max(30)
export const angleDegrees = finite.min(-360).max(360)
export const energyJoules = finite.min(0.01).max(20_000)
export const colourTemperatureKelvin = finite.min(1_500).max(20_000)
export const share = finite.min(0).max(1)
export const stops = finite.min(-20).max(20)

export const shortText = z.string().max(120)
export const longText = z.string().max(4_000)

/** A key of a record in the plan: made by the program, never shown. */
export const idText = z
  .string()
  .regex(/^[A-Za-z0-9_-]{1,40}$/, 'letters, digits, - and _ only, at most 40')
  // An id such as `constructor` would be found in every record, whether it is there or not.
  .refine((id) => !(id in Object.prototype), 'not a name that the language itself uses')

/** A surface's colour as it looks under daylight, `#rrggbb` in sRGB; turned into a reflectance curve by the core. */
export const swatch = z.string().regex(/^#[0-9a-f]{6}$/, 'a colour like #7c7c7c')

/** A place in the set. An object and not a tuple, so that two people may change plan and height of one light at once. */
export const placeSchema = z.strictObject({
  xMetres: coordinateMetres,
  yMetres: coordinateMetres,
  zMetres: coordinateMetres,
})
export type Place = z.infer<typeof placeSchema>
