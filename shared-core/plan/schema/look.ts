import { z } from 'zod'
import { angleDegrees, colourTemperatureKelvin, energyJoules, idText, longText, placeSchema, share, shortText, sizeMetres, stops, swatch, coordinateMetres } from './quantities.ts'

export const cameraSchema = z.strictObject({
  place: placeSchema,
  aim: placeSchema,
  focalLengthMillimetres: z.number().min(8).max(1_200),
  /** As held: an upright frame has the long side as its height. */
  sensorWidthMillimetres: z.number().min(4).max(120),
  sensorHeightMillimetres: z.number().min(4).max(120),
  fNumber: z.number().min(0.7).max(128),
  shutterSeconds: z.number().min(1 / 32_000).max(60),
  isoSpeed: z.number().min(6).max(819_200),
  whiteBalanceKelvin: colourTemperatureKelvin,
  /** False: the camera judges for itself, and every gelled frame comes out balanced otherwise. */
  whiteBalanceFixed: z.boolean(),
  /** The shortest shutter at which the whole frame is open. */
  syncSeconds: z.number().min(1 / 8_000).max(1),
  radioTrigger: z.boolean(),
  /** Stops this body clips later (positive) than ISO saturation speed says. */
  headroomStops: z.number().min(-3).max(3),
  /** Share of the frame's mean light that the lens spreads over everything. */
  veilingGlare: z.number().min(0).max(0.2),
})
export type Camera = z.infer<typeof cameraSchema>

export const subjectSchema = z.strictObject({
  name: shortText,
  xMetres: coordinateMetres,
  yMetres: coordinateMetres,
  posture: z.enum(['standing', 'sitting']),
  heightMetres: z.number().min(0.8).max(2.3),
  /** Body and head turned to camera right, in degrees. */
  turnDegrees: angleDegrees,
  headTurnDegrees: z.number().min(-90).max(90),
  /** Chin up is positive. */
  headTiltDegrees: z.number().min(-45).max(45),
  /** Individual typology angle: about 60 very fair, 10 tan, -60 very deep. */
  skinItaDegrees: z.number().min(-75).max(65),
  /** -1 olive, 0 neutral, 1 rosy. */
  skinUndertone: z.number().min(-1).max(1),
  /** 0 matt powder, 1 dewy. */
  skinSheen: share,
  hair: swatch,
  lips: swatch,
  cloth: swatch,
})
export type Subject = z.infer<typeof subjectSchema>

export const backdropSchema = z.strictObject({
  /** 'none' shows the rear wall. */
  kind: z.enum(['paper', 'none']),
  swatch,
  yMetres: coordinateMetres,
  centreXMetres: coordinateMetres,
  widthMetres: sizeMetres,
  topMetres: sizeMetres,
  /** What the background should be: decides which checks speak. */
  intent: z.enum(['clean-white', 'even-colour', 'glow', 'free']),
})
export type Backdrop = z.infer<typeof backdropSchema>

export const planes = ['background', 'edge', 'shadow-side', 'front', 'product'] as const
export type Plane = (typeof planes)[number]

/** Places of the subject and background that are always metered. Left and right are the camera's. */
export const namedAreas = [
  'nose', 'lips', 'cheek-left', 'cheek-right', 'jaw-left', 'jaw-right', 'rear-jaw-left', 'rear-jaw-right', 'neck', 'hair',
  'shoulder-left', 'shoulder-right', 'breastbone',
  'background-centre', 'background-top-left', 'background-top-right', 'background-bottom-left', 'background-bottom-right',
] as const
export type NamedArea = (typeof namedAreas)[number]

export const lightSchema = z.strictObject({
  /** Written on the tape. Unique in a look; the reader re-letters a clash. */
  letter: z.string().regex(/^[A-Z][A-Z0-9]?$/),
  setUpOrder: z.number().min(0).max(1_000),
  on: z.boolean(),
  headId: idText,
  modifierId: idText,
  grid: z.strictObject({
    kind: z.enum(['none', 'honeycomb', 'fabric']),
    /** The angle from the axis at which the grid closes is half of what is printed on it: 40 means 40 across. */
    openingDegrees: z.number().min(5).max(120),
  }),
  /** Centre of the front of the modifier: the point all distances are taped from. */
  place: placeSchema,
  aim: placeSchema,
  rollDegrees: angleDegrees,
  energyJoules,
  /** Sheets from tube to subject. */
  gelIds: z.array(idText).max(4),
  gelPlace: z.enum(['at-the-head', 'over-the-front']),
  support: z.enum(['stand', 'low-stand', 'boom']),
  sandbag: z.boolean(),
  safetyCable: z.boolean(),
  /** The circuit of the room that the head is plugged into; empty while nobody has said. */
  circuitId: z.string().max(40),
  plane: z.enum(planes),
  /** The area this light is metered at: a named area or the id of an added point. */
  serves: z.string().max(40),
  /** What was agreed, in stops from the aperture; null while undecided. */
  wantedStops: stops.nullable(),
  note: shortText,
})
export type Light = z.infer<typeof lightSchema>

/** Everything in the set that is not a light: it blocks, throws back or lets through. */
export const pieceSchema = z.strictObject({
  kind: z.enum(['flag', 'v-flat', 'board', 'scrim']),
  label: shortText,
  /** Centre of the piece; of the hinge line for a V-flat. */
  place: placeSchema,
  /** Direction its front faces on the floor: 0 to the camera, 90 to camera right. */
  facingDegrees: angleDegrees,
  /** Front tipped up is positive. */
  tiltDegrees: z.number().min(-90).max(90),
  /** Of one panel. */
  widthMetres: sizeMetres,
  heightMetres: sizeMetres,
  /** Between the two panels of a V-flat. */
  openDegrees: z.number().min(10).max(350),
  front: swatch,
  back: swatch,
  /** Of a scrim's cloth: share of the light that comes out on the far side. 0 for all else. */
  transmittance: share,
})
export type Piece = z.infer<typeof pieceSchema>

/** A point somebody added: metered like a named area. */
export const pointSchema = z.strictObject({
  label: shortText,
  place: placeSchema,
  /** The way the meter faces there. */
  facingDegrees: angleDegrees,
  tiltDegrees: z.number().min(-90).max(90),
  swatch,
})
export type Point = z.infer<typeof pointSchema>

/** How the picture is finished after capture; part of what is agreed. */
export const finishSchema = z.strictObject({
  exposureStops: z.number().min(-5).max(5),
  /** 0 as shot; 1 doubles the slope at mid-grey. */
  contrast: z.number().min(-0.8).max(1),
  /** Stops by which white is pulled down: 0.5 makes what is half a stop short of clipping white. */
  whitePointStops: z.number().min(0).max(2),
  /** Share of full scale that becomes black. */
  blackPoint: z.number().min(0).max(0.2),
})
export type Finish = z.infer<typeof finishSchema>

export const meterSchema = z.strictObject({
  receptor: z.enum(['dome', 'flat']),
  domeConstant: z.number().min(320).max(540),
  flatConstant: z.number().min(240).max(400),
})
export type MeterSettings = z.infer<typeof meterSchema>

/** An area whose colour is the product's own. A clean plate is a frame by clear light alone, to take that colour from. */
export const trueAreaSchema = z.strictObject({ cleanPlatePlanned: z.boolean() })

/** How loud a snag is: it cannot work or is unsafe; it will show in the picture; good to know. */
export const severities = ['stop', 'look', 'note'] as const
export type Severity = (typeof severities)[number]

/** Which snag, as the checks key it: a rule, and the ids of what it is about. */
export const snagKeyText = z
  .string()
  .regex(/^[A-Za-z0-9_:-]{1,160}$/, 'letters, digits, -, _ and : only, at most 160')
  .refine((key) => !(key in Object.prototype), 'not a name that the language itself uses')

/** "That's the look": somebody saw what a check says and wants it so. On record for the retoucher. */
export const acceptanceSchema = z.strictObject({
  by: z.string().min(1).max(120),
  /** Milliseconds since 1970, by the clock of who accepted. */
  atMs: z.number().int().min(0).max(8_640_000_000_000_000),
  severity: z.enum(severities),
  /** The check's number then, in its own unit. */
  value: z.number().min(-1_000_000).max(1_000_000),
  /** What the check said then. */
  message: z.string().max(300),
})
export type Acceptance = z.infer<typeof acceptanceSchema>

export const lookSchema = z.strictObject({
  name: shortText,
  order: z.number().min(0).max(1_000),
  note: longText,
  camera: cameraSchema,
  meter: meterSchema,
  subject: subjectSchema,
  backdrop: backdropSchema,
  lights: z.record(idText, lightSchema),
  pieces: z.record(idText, pieceSchema),
  points: z.record(idText, pointSchema),
  finish: finishSchema,
  /** Flashes of the whole look, tests too; null while nobody has said. */
  framesPlanned: z.number().int().min(1).max(100_000).nullable(),
  /** By area: what must read true. */
  mustReadTrue: z.record(idText, trueAreaSchema),
  /** By the key of the snag. */
  accepted: z.record(snagKeyText, acceptanceSchema),
})
export type Look = z.infer<typeof lookSchema>
