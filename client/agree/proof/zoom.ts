/** What every proof shows of its Frame: the same part of each. */
export interface Zoom {
  /** 1 shows the whole Frame. */
  readonly times: number
  /** Middle of what is seen, as shares of the Frame from the left and the top. */
  readonly x: number
  readonly y: number
}

export const WHOLE: Zoom = { times: 1, x: 0.5, y: 0.5 }
export const MOST_TIMES = 6

/** Closer or farther, with the place under the pointer staying under it. @param x,y in the proof, 0-1 */
export function zoomedAt(zoom: Zoom, by: number, x: number, y: number): Zoom {
  const times = Math.min(MOST_TIMES, Math.max(1, zoom.times * by))
  const place = placeUnder(zoom, x, y)
  return within({ times, x: place.x - (x - 0.5) / times, y: place.y - (y - 0.5) / times })
}

/** The picture follows the hand. @param byX,byY of the proof's own width and height */
export function pannedBy({ times, x, y }: Zoom, byX: number, byY: number): Zoom {
  return within({ times, x: x - byX / times, y: y - byY / times })
}

/** Where in the Frame a place of the proof lies. */
export function placeUnder({ times, x, y }: Zoom, proofX: number, proofY: number): { readonly x: number; readonly y: number } {
  return { x: x + (proofX - 0.5) / times, y: y + (proofY - 0.5) / times }
}

/** As CSS: the picture larger than its box, moved so that the part seen fills it. */
export function transformOf({ times, x, y }: Zoom): string {
  const percent = (share: number) => `${((0.5 - share * times) * 100).toFixed(3)}%`
  return `translate(${percent(x)}, ${percent(y)}) scale(${times})`
}

/** Nothing beside the Frame is ever seen. */
function within({ times, x, y }: Zoom): Zoom {
  const half = 0.5 / times
  const held = (share: number) => Math.min(1 - half, Math.max(half, share))
  return { times, x: held(x), y: held(y) }
}
