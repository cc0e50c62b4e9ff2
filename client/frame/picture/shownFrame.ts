import type { ShownPicture } from './reading.ts'

let shown: ShownPicture | null = null
const listeners = new Set<() => void>()

/** The Frame that is on the page, for an eye-dropper elsewhere. */
export function keepShownFrame(picture: ShownPicture): void {
  shown = picture
  for (const listener of listeners) listener()
}

export function shownFrame(): ShownPicture | null {
  return shown
}

/** Told of every new one. @returns stops it */
export function onShownFrame(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
