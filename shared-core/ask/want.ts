import type { Xyz } from '../colour/triples.ts'
import type { AreaId } from '../predict/prediction.ts'

/**
 * What is wanted of a look, in the words a photographer says it: levels in stops from the taking aperture, colours by
 * area, and relations that must hold. Anything not wanted may stay as it is.
 */
export type Want =
  /** The look's receptor at the area, all lights together. */
  | { readonly kind: 'area-level'; readonly areaId: AreaId; readonly stops: number }
  /** One light alone, dome towards it, at the place it serves: what is written on its tape. */
  | { readonly kind: 'light-level'; readonly lightId: string; readonly stops: number }
  /**
   * The light that owns the area carries these sheets; with `stops`, it alone reads so there, and else it keeps its
   * level.
   */
  | { readonly kind: 'area-gel'; readonly areaId: AreaId; readonly gelIds: readonly string[]; readonly stops: number | null }
  /** After clip and matrix, before the finish: as `AreaColour.xyz`. */
  | { readonly kind: 'area-colour'; readonly areaId: AreaId; readonly xyz: Xyz }
  /** Everything behind the subject that is in frame reads white in camera, by the lights behind, and no hotter than need be. */
  | { readonly kind: 'white-behind' }
  /** The area looks as it would under clear light at the same brightness. */
  | { readonly kind: 'reads-true'; readonly areaId: AreaId }
  /** Of the camera; every light keeps its level unless something else is wanted of it. */
  | { readonly kind: 'aperture'; readonly fNumber: number }
  | { readonly kind: 'iso'; readonly isoSpeed: number }

/** How near is near enough: a tenth of a stop is a meter's last digit. */
export const LEVEL_TOLERANCE_STOPS = 0.1
/** Each channel this near to clear light reads true (common practice, no source). */
export const TRUE_TOLERANCE_STOPS = 0.2
/** Mean just noticeable difference of printed colours in CIELAB units (M. Mahy, L. Van Eycken, A. Oosterlinck 1994). */
export const COLOUR_TOLERANCE = 2.3
/** Keep this much in hand at either end of a head's range (common practice, no source). */
export const MARGIN_STOPS = 0.3
