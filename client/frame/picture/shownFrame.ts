import type { ShownPicture } from './reading.ts'

let shown: ShownPicture | null = null

/** The Frame that is on the page, for an eye-dropper elsewhere. */
export function keepShownFrame(picture: ShownPicture): void {
  shown = picture
}

export function shownFrame(): ShownPicture | null {
  return shown
}
