import { z } from 'zod'
import { colourTemperatureKelvin, energyJoules, share, shortText, sizeMetres, stops, swatch } from './quantities.ts'

/** How a head's own panel writes its power; the plan always keeps joules. */
export const powerNotations = ['fraction', 'stops-from-full', 'scale-of-ten', 'joules'] as const

export const headSchema = z.strictObject({
  name: shortText,
  count: z.number().int().min(0).max(99),
  fullEnergyJoules: energyJoules,
  lowestEnergyJoules: energyJoules,
  /** 0.1 for tenths, 1/3 for thirds. */
  stepStops: z.number().min(0.05).max(1),
  powerNotation: z.enum(powerNotations),
  /** Luminous energy of the bare tube for each joule stored. Published range 15-45; heads of equal energy differ. */
  efficacyLumenSecondsPerJoule: z.number().min(5).max(100),
  colourTemperatureKelvin,
  /** How much bluer (positive) the flash gets from full power to the lowest. */
  driftKelvinAtLowest: z.number().min(-1_000).max(2_000),
  /** Time above a tenth of the peak, at full power. */
  t01SecondsAtFull: z.number().min(0.00001).max(0.1),
  recycleSecondsAtFull: z.number().min(0.01).max(60),
  modellingLamp: z.enum(['none', 'led', 'halogen']),
  modellingLampWatts: z.number().min(0).max(1_000),
  supply: z.enum(['mains', 'battery']),
  /** Flashes on one charge at full power; null for mains. */
  flashesPerChargeAtFull: z.number().min(1).max(100_000).nullable(),
  /** Learned from the meter and added to everything this head is predicted to give; so too of modifiers and gels. */
  learnedStops: stops,
})
export type Head = z.infer<typeof headSchema>

/** What shapes a head's light. Each is described in photometry/modifier. */
export const modifierKinds = [
  'bare-tube',
  'reflector',
  'snoot',
  'beauty-dish',
  'softbox',
  'octa',
  'strip',
  'umbrella-white',
  'umbrella-silver',
  'umbrella-diffused',
  'umbrella-shoot-through',
] as const
export type ModifierKind = (typeof modifierKinds)[number]

export const modifierSchema = z.strictObject({
  name: shortText,
  kind: z.enum(modifierKinds),
  count: z.number().int().min(0).max(99),
  /** Across the front; round and octagonal fronts use the width as their diameter across the flats. */
  widthMetres: sizeMetres,
  heightMetres: sizeMetres,
  /** From the front to the back of the piece, for fit checks. */
  depthMetres: sizeMetres,
  /** Layers of diffusion between tube and subject, for boxes; a sock for a dish. */
  diffusers: z.number().int().min(0).max(2),
  learnedStops: stops,
})
export type Modifier = z.infer<typeof modifierSchema>

export const gelFamilies = [
  'straw', 'yellow', 'apricot', 'amber', 'orange', 'red', 'pink', 'rose', 'magenta', 'lavender', 'violet',
  'blue', 'sky', 'turquoise', 'teal', 'green', 'moss', 'pistachio',
] as const
export type GelFamily = (typeof gelFamilies)[number]

/** Where a sheet's transmittance curve comes from. */
export const gelSourceSchema = z.discriminatedUnion('from', [
  /** One of our own hue families; density 1 is the family's usual sheet, 2 is that sheet twice. */
  z.strictObject({ from: z.literal('family'), family: z.enum(gelFamilies), density: z.number().min(0.1).max(4) }),
  /** A conversion sheet for a stated shift, positive warmer. */
  z.strictObject({ from: z.literal('mired'), shiftMired: z.number().min(-300).max(400) }),
  z.strictObject({ from: z.literal('neutral'), lossStops: z.number().min(0).max(10) }),
  /** The user's own measurement. */
  z.strictObject({
    from: z.literal('rows'),
    rows: z.array(z.tuple([z.number().min(200).max(2_000), share])).min(2).max(1_000),
  }),
  /** A colour seen through the sheet on white, and what the meter loses. */
  z.strictObject({ from: z.literal('declared'), colour: swatch, lossStops: z.number().min(0).max(10) }),
])
export type GelSource = z.infer<typeof gelSourceSchema>

export const gelSchema = z.strictObject({
  name: shortText,
  source: gelSourceSchema,
  /** Sheets in the drawer; 0 means to be bought. */
  sheets: z.number().int().min(0).max(999),
  /** What the maker's label says of the batch; empty when nobody looked. Batches of one name differ. */
  batch: shortText,
  /** Of one uncut sheet: decides what a cut can cover. */
  sheetWidthMetres: sizeMetres,
  sheetHeightMetres: sizeMetres,
  learnedStops: stops,
})
export type Gel = z.infer<typeof gelSchema>
