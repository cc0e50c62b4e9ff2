import type { Tint } from '../../../shared-core/picture/leaderView.ts'
import type { PictureView } from '../../../shared-core/picture/views.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { PlanParcel } from './planParcel.ts'
import type { PixelShare } from '../../../shared-core/predict/whoLights.ts'

/**
 * Which picture one is: each kind keeps its size, and with it its layers. `hand` is the Frame while a hand moves
 * something, `proof` a whole look beside others.
 */
export type PictureKind = 'frame' | 'hand' | 'proof' | 'eyes' | 'single' | 'saved'

export interface EyesPart {
  readonly width: number
  readonly height: number
}

/** What the page asks of the worker. The newest order of a slot makes older ones worthless. */
export interface PictureOrder {
  readonly slot: string
  readonly kind: PictureKind
  readonly plan: Plan
  readonly lookId: string
  readonly width: number
  readonly height: number
  /** Of the eyes' part, as shares of the Frame; the whole Frame unless said. */
  readonly eyes?: EyesPart
  readonly soloLightId: string | null
  /** While a hand is on something: fewer points a light. */
  readonly coarse: boolean
  readonly view: PictureView
  /** Something is read off it: the linear picture comes with it, which weighs three times the picture itself. */
  readonly isRead?: boolean
  /** Of each light by id, for the view of who lights what. */
  readonly tints?: Readonly<Record<string, Tint>>
  /** The display's own colours; files are sRGB. */
  readonly space: PredefinedColorSpace
}

/** A letter or a word on a part of the picture, 0-1 from the left and the top. */
export interface PictureLetter {
  readonly text: string
  readonly frameX: number
  readonly frameY: number
}

/** What the worker gives back; pixels are null when the picture could not be drawn, with the reason in words. */
export interface DrawnPicture {
  readonly slot: string
  readonly width: number
  readonly height: number
  readonly rgba: Uint8ClampedArray<ArrayBuffer> | null
  /** Camera channels, three a pixel, for readings; null unless ordered. */
  readonly linear: Float32Array<ArrayBuffer> | null
  /** What the parts of a view are, to be written on them. */
  readonly letters: readonly PictureLetter[]
  readonly trouble: string
}

/** Who lights a place of the Frame as it was last drawn. */
export interface SharesOrder {
  readonly slot: string
  readonly kind: 'shares'
  /** 0-1 from the left and the top. */
  readonly frameX: number
  readonly frameY: number
}

export interface FoundShares {
  readonly slot: string
  readonly shares: readonly PixelShare[]
}

/** Which places of the subject lie under points of the Frame, and which of some places the camera sees. */
export interface PlacesOrder {
  readonly slot: string
  readonly kind: 'places'
  readonly plan: Plan
  readonly lookId: string
  /** 0-1 from the left and the top. */
  readonly under: readonly (readonly [frameX: number, frameY: number])[]
  /** Of the surface at rest, in metres. */
  readonly places: readonly Vector[]
}

export interface FoundPlaces {
  readonly slot: string
  /** In the order asked for; null where the background shows. */
  readonly under: readonly (Vector | null)[]
  readonly seen: readonly boolean[]
}

/** Somebody is about to move a light. Nothing is answered. */
export interface HandNear {
  readonly kind: 'hand near'
}

export type WorkerOrder = PictureOrder | SharesOrder | PlacesOrder
type InParcels<Order> = Order extends { readonly plan: Plan } ? Omit<Order, 'plan'> & { readonly plan: PlanParcel } : Order
/** An order as it crosses to the worker. */
export type SentOrder = InParcels<WorkerOrder>
export type WorkerAnswer = DrawnPicture | FoundShares | FoundPlaces
