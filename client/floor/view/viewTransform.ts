import type { Bounds } from './bounds.ts'
import type { DrawnPoint } from './projection.ts'

/** From metres of a drawing to pixels of its panel: `pixel = metre * scale + offset`. */
export interface ViewTransform {
  readonly pixelsPerMetre: number
  readonly offsetX: number
  readonly offsetY: number
}

export interface PanelSize {
  readonly width: number
  readonly height: number
}

/** Below, a whole studio is a stamp; above, a head fills the panel. */
export const ZOOM_LIMITS = { leastPixelsPerMetre: 12, mostPixelsPerMetre: 900 } as const

/** Room kept free inside the panel, in pixels: bars above and below lie over the drawing. */
export interface Insets {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The transform that shows `bounds` as large as the panel less its insets allows, in the middle of what is left. */
export function fitTo(bounds: Bounds, panel: PanelSize, insets: Insets): ViewTransform {
  const freeWidth = Math.max(1, panel.width - insets.left - insets.right)
  const freeHeight = Math.max(1, panel.height - insets.top - insets.bottom)
  const width = Math.max(0.01, bounds.right - bounds.left)
  const height = Math.max(0.01, bounds.bottom - bounds.top)
  const pixelsPerMetre = withinZoomLimits(Math.min(freeWidth / width, freeHeight / height))
  return {
    pixelsPerMetre,
    offsetX: insets.left + freeWidth / 2 - ((bounds.left + bounds.right) / 2) * pixelsPerMetre,
    offsetY: insets.top + freeHeight / 2 - ((bounds.top + bounds.bottom) / 2) * pixelsPerMetre,
  }
}

/** Zooms by `factor` with the drawing held fast under one pixel of the panel. */
export function zoomAbout(transform: ViewTransform, pixel: DrawnPoint, factor: number): ViewTransform {
  const pixelsPerMetre = withinZoomLimits(transform.pixelsPerMetre * factor)
  const held = metresAt(transform, pixel)
  return { pixelsPerMetre, offsetX: pixel[0] - held[0] * pixelsPerMetre, offsetY: pixel[1] - held[1] * pixelsPerMetre }
}

/** Slides the drawing by pixels. */
export function slide(transform: ViewTransform, dx: number, dy: number): ViewTransform {
  return { ...transform, offsetX: transform.offsetX + dx, offsetY: transform.offsetY + dy }
}

/** Slides the drawing so that a point of it, in metres, lies in the middle of the panel. */
export function centredOn(transform: ViewTransform, drawn: DrawnPoint, panel: PanelSize): ViewTransform {
  const [x, y] = pixelAt(transform, drawn)
  return slide(transform, panel.width / 2 - x, panel.height / 2 - y)
}

/**
 * Two fingers: the drawing stays under both, as far as one scale and no turning allow.
 * @param before where the fingers were, in pixels; after where they are now.
 */
export function pinch(
  transform: ViewTransform,
  before: readonly [DrawnPoint, DrawnPoint],
  after: readonly [DrawnPoint, DrawnPoint],
): ViewTransform {
  const spread = (pair: readonly [DrawnPoint, DrawnPoint]) =>
    Math.sqrt((pair[0][0] - pair[1][0]) ** 2 + (pair[0][1] - pair[1][1]) ** 2)
  const middle = (pair: readonly [DrawnPoint, DrawnPoint]): DrawnPoint => [
    (pair[0][0] + pair[1][0]) / 2,
    (pair[0][1] + pair[1][1]) / 2,
  ]
  const from = middle(before)
  const to = middle(after)
  const factor = spread(before) > 1 ? spread(after) / spread(before) : 1
  return slide(zoomAbout(transform, from, factor), to[0] - from[0], to[1] - from[1])
}

/** Pixel of the panel at which a point of the drawing lies. */
export function pixelAt(transform: ViewTransform, drawn: DrawnPoint): DrawnPoint {
  return [drawn[0] * transform.pixelsPerMetre + transform.offsetX, drawn[1] * transform.pixelsPerMetre + transform.offsetY]
}

/** Point of the drawing, in metres, under a pixel of the panel. */
export function metresAt(transform: ViewTransform, pixel: DrawnPoint): DrawnPoint {
  return [(pixel[0] - transform.offsetX) / transform.pixelsPerMetre, (pixel[1] - transform.offsetY) / transform.pixelsPerMetre]
}

function withinZoomLimits(pixelsPerMetre: number): number {
  return Math.min(ZOOM_LIMITS.mostPixelsPerMetre, Math.max(ZOOM_LIMITS.leastPixelsPerMetre, pixelsPerMetre))
}
