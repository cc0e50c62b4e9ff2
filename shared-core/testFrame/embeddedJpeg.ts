/** A JPEG that lies inside a larger file. */
export interface EmbeddedJpeg {
  readonly start: number
  readonly end: number
  readonly width: number
  readonly height: number
}

const [MARKER, START, END, SCAN] = [0xff, 0xd8, 0xd9, 0xda]
/** Baseline, extended and progressive: what every decoder shows. Lossless frames hold the raw picture itself (ITU-T T.81, table B.1). */
const SHOWN_FRAMES = [0xc0, 0xc1, 0xc2]

/**
 * The largest JPEG inside a file by its markers (ITU-T T.81, annex B): the preview that cameras put into their raw files,
 * whatever the maker's directory says. Thumbnails inside another picture's segments are stepped over with them.
 * @returns null where there is none that is whole
 */
export function largestEmbeddedJpeg(bytes: Uint8Array): EmbeddedJpeg | null {
  let largest: EmbeddedJpeg | null = null
  for (let at = bytes.indexOf(MARKER); at >= 0 && at < bytes.length - 3; at = bytes.indexOf(MARKER, at)) {
    const found = bytes[at + 1] === START && bytes[at + 2] === MARKER ? jpegAt(bytes, at) : null
    if (found !== null && (largest === null || found.width * found.height > largest.width * largest.height)) largest = found
    at = found === null ? at + 1 : found.end
  }
  return largest
}

/** Walks a JPEG's segments up to its end. */
function jpegAt(bytes: Uint8Array, start: number): EmbeddedJpeg | null {
  let size: { readonly width: number; readonly height: number } | null = null
  let at = start + 2
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== MARKER) return null
    const marker = bytes[at + 1]!
    if (marker === END) return size === null ? null : { start, end: at + 2, ...size }
    if (marker === MARKER) {
      at++
      continue
    }
    const length = 256 * bytes[at + 2]! + bytes[at + 3]!
    if (length < 2) return null
    if (SHOWN_FRAMES.includes(marker) && at + 9 <= bytes.length) {
      size = { height: 256 * bytes[at + 5]! + bytes[at + 6]!, width: 256 * bytes[at + 7]! + bytes[at + 8]! }
    }
    at += 2 + length
    if (marker === SCAN) {
      at = endOfScan(bytes, at)
      if (at < 0) return null
      if (bytes[at + 1] === END) return size === null ? null : { start, end: at + 2, ...size }
    }
  }
  return null
}

/** The next marker after coded data, where 0 after 255 is data and 208-215 only count; -1 where there is none. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(MARKER, from); at >= 0 && at + 1 < bytes.length; at = bytes.indexOf(MARKER, at + 1)) {
    const next = bytes[at + 1]!
    if (next !== 0 && next !== MARKER && (next < 0xd0 || next > 0xd7)) return at
  }
  return -1
}
