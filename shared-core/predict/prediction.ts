import type { CameraRgb, Xyz } from '../colour/triples.ts'
import type { Vector } from '../arithmetic/vector.ts'
import type { NamedArea, Plane } from '../plan/schema/look.ts'
import type { Caution } from './caution.ts'
import type { AcceptedSnag, Snag } from './snag.ts'

/**
 * Everything the board knows about a look, computed from the plan alone. Plain data: it goes through workers, JSON and
 * the command line unchanged. All stops are relative to the taking aperture unless the name says otherwise.
 */
export interface Prediction {
  readonly lookId: string
  readonly lookName: string
  readonly taking: Taking
  /** In the order of the schema's areas, then added points, then the fronts of lit boxes behind the subject. */
  readonly areas: readonly AreaPrediction[]
  /** In set-up order. */
  readonly lights: readonly LightPrediction[]
  readonly background: BackgroundPrediction
  readonly spills: readonly Spill[]
  readonly framing: Framing
  readonly depthOfField: DepthOfField
  readonly ambient: AmbientPrediction
  /** Loudest first, and the worst first among the equally loud; without what somebody accepted. */
  readonly snags: readonly Snag[]
  readonly accepted: readonly AcceptedSnag[]
  readonly cautions: readonly Caution[]
}

export interface Taking {
  readonly fNumber: number
  readonly isoSpeed: number
  readonly shutterSeconds: number
  readonly whiteBalanceKelvin: number
  /** Exposure that a perfect white surface needs for its brightest channel to clip. */
  readonly clipLuxSeconds: number
}

/** What a meter's display shows: a full f-number and tenths of a stop past it. */
export interface MeterReading {
  readonly luxSeconds: number
  /** Exact f-number; 0 when nothing arrives. */
  readonly fNumber: number
  /** As the meter writes it: "8 and 3 tenths" is fullFNumber 8, tenths 3. Null when nothing arrives. */
  readonly fullFNumber: number | null
  readonly tenths: number
  /** Relative to the taking aperture; -Infinity never leaves the core: null means nothing arrives. */
  readonly stops: number | null
}

export type AreaId = NamedArea | (string & {})
export type AreaMaterial = 'skin' | 'lips' | 'hair' | 'cloth' | 'backdrop' | 'front' | 'point'

export interface AreaPrediction {
  readonly id: AreaId
  /** "camera-left cheek" */
  readonly label: string
  readonly material: AreaMaterial
  readonly place: Vector
  readonly facing: Vector
  /** False when the camera cannot see the place (behind the head, outside the frame). */
  readonly inFrame: boolean
  /** Where it falls in the Frame, 0-1 from the left and the top. */
  readonly frameX: number
  readonly frameY: number
  /** All lights, with the look's receptor held at the place and facing out from it. */
  readonly meter: MeterReading
  readonly dome: MeterReading
  readonly flat: MeterReading
  /** What falls on the surface itself, lights and ambient. */
  readonly exposureLuxSeconds: number
  /** In the prediction's order of lights; a light that gives nothing is there with nulls. */
  readonly byLight: readonly AreaFromLight[]
  readonly colour: AreaColour
}

export interface AreaFromLight {
  readonly lightId: string
  /** As the look's receptor reads this light alone, facing out from the area. */
  readonly stops: number | null
  /** What this light alone puts on the surface. */
  readonly exposureLuxSeconds: number
  /** Share of the area's luminance in the picture, 0-1. */
  readonly share: number
  /** This light alone in the camera's channels, relative to clip. */
  readonly channels: CameraRgb
}

export interface AreaColour {
  /** Balanced camera channels; 1 is clip. May pass 1: the clip is applied after. */
  readonly channels: CameraRgb
  readonly clipped: readonly [red: boolean, green: boolean, blue: boolean]
  /** After clip and matrix, before the finish; Y = 1 is full scale. */
  readonly xyz: Xyz
  /** After the finish, inside the display's gamut: `#rrggbb` in sRGB. */
  readonly display: string
  /** Whether display gamut could not hold the colour. */
  readonly outsideDisplay: boolean
  /** Plain words: "deep violet", "pale apricot". */
  readonly words: string
  /** Stops of the reflected light above (positive) what a spot meter calls mid-grey. */
  readonly spotStopsOverGrey: number | null
}

export interface LightPrediction {
  readonly id: string
  readonly letter: string
  readonly plane: Plane
  readonly on: boolean
  /** "octa 100 · fabric grid · clear" */
  readonly summary: string
  readonly serves: AreaId
  /** Incident dome at the place it serves, pointed at this light's front, this light alone. */
  readonly level: MeterReading
  readonly wantedStops: number | null
  /** Front of the modifier to the place it serves. */
  readonly distanceMetres: number
  /** Size of the front as seen from the place it serves: how soft. */
  readonly apparentSizeDegrees: number
  readonly energyJoules: number
  readonly stopsFromFull: number
  /** As this head's panel writes it. */
  readonly powerText: string
  /** Up to full power, and down to the lowest: both can run out. */
  readonly stopsInHand: number
  readonly stopsAboveLowest: number
  /** Recycle and t0.1 at this power. */
  readonly recycleSeconds: number
  readonly t01Seconds: number
  readonly colourTemperatureKelvin: number
  readonly gel: GelPrediction
  /** Uncertainty of the level before any reading, in stops either way. */
  readonly plusMinusStops: number
}

export interface GelPrediction {
  readonly clear: boolean
  readonly name: string
  /** What an incident meter loses. */
  readonly meterLossStops: number
  /** What the camera loses in the channel it passes best. */
  readonly strongestChannelLossStops: number
  /** Stops past clear's clip at which this gel also reads white: the weakest channel's loss. */
  readonly whiteOutStops: number
  readonly channelLossStops: CameraRgb
  /** The gel's colour on white paper and on this skin, both at a fair exposure, `#rrggbb`. */
  readonly onWhite: string
  readonly onSkin: string
  readonly words: string
}

export type WhiteVerdict = 'white' | 'cast-left' | 'not-white'

export interface BackgroundSpot {
  readonly areaId: AreaId
  readonly label: string
  readonly verdict: WhiteVerdict
  readonly verdictAfterFinish: WhiteVerdict
  /** Stops still missing for the weakest channel; negative is in hand; null when dark. */
  readonly stopsMissing: number | null
  /** Hue of what is left, in words; empty when white. */
  readonly cast: string
  /** Largest channel over the smallest after the clip, in stops. */
  readonly castStops: number
}

export interface BackgroundPrediction {
  /** What stands behind: the paper, a lit front, or the wall. */
  readonly behind: 'paper' | 'front' | 'wall'
  readonly spots: readonly BackgroundSpot[]
  /** The worst of the spots in frame. */
  readonly verdict: WhiteVerdict
  readonly verdictAfterFinish: WhiteVerdict
  /** Missing at the worst spot. */
  readonly stopsMissing: number | null
  /** Brightest spot over the darkest in frame. */
  readonly unevennessStops: number
  /** White point pull and contrast that would clear the worst spot; null where no pull within range does. */
  readonly whitePointPullStops: number | null
  readonly contrastPull: number | null
  /** Hottest wrap on jaw, neck or shoulders from what lies behind, now and once it reads white. */
  readonly wrap: Wrap | null
  readonly haze: Haze
}

export interface Wrap {
  readonly areaId: AreaId
  readonly stopsNow: number | null
  readonly stopsWhenWhite: number | null
  /** The hottest channel of that wrap when white, in stops over clip (positive burns). */
  readonly hottestChannelStopsWhenWhite: number | null
}

export interface Haze {
  /** Mean of the frame in clip units after the lens, and the black it lifts. */
  readonly frameMean: number
  readonly blackLift: number
  /** That lift by camera channel: what lies over every part of the picture. */
  readonly veil: CameraRgb
  /** Lifted black in stops relative to mid-grey (negative is darker). */
  readonly blackStopsUnderGrey: number | null
}

export interface Spill {
  readonly areaId: AreaId
  readonly areaLabel: string
  /** The light the area belongs to. */
  readonly ownerLightId: string
  readonly diluterLightId: string
  readonly diluterIsClear: boolean
  /** How far the diluter lies under the owner there. Negative: it is brighter. */
  readonly stopsUnder: number
  readonly thresholdStops: number
}

export interface Framing {
  readonly atSubjectWidthMetres: number
  readonly atSubjectHeightMetres: number
  readonly atBackdropWidthMetres: number
  readonly atBackdropHeightMetres: number
  readonly backdropFillsFrame: boolean
  readonly horizontalDegrees: number
  readonly verticalDegrees: number
  readonly subjectDistanceMetres: number
}

export interface DepthOfField {
  readonly nearMetres: number
  /** null: sharp to infinity. */
  readonly farMetres: number | null
  readonly totalMetres: number | null
}

export interface AmbientPrediction {
  readonly lux: number
  /** At the shutter, under (negative) the aperture. */
  readonly stops: number | null
}
