import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { encode } from 'fast-png'

export interface PictureDifference {
  /** Levels of 255, over all colour bytes. */
  readonly meanLevels: number
  /** Share of the colour bytes that are off by more than `farLevels`. */
  readonly farShare: number
}

/** By how much two pictures of four bytes a pixel differ; alpha is not looked at. */
export function pictureDifference(a: ArrayLike<number>, b: ArrayLike<number>, farLevels: number): PictureDifference {
  if (a.length !== b.length) return { meanLevels: Infinity, farShare: 1 }
  let sum = 0
  let far = 0
  for (let i = 0; i < a.length; i++) {
    if (i % 4 === 3) continue
    const off = Math.abs(a[i]! - b[i]!)
    sum += off
    if (off > farLevels) far++
  }
  const colourBytes = (3 * a.length) / 4
  return { meanLevels: sum / colourBytes, farShare: far / colourBytes }
}

/** Writes where two pictures of one size differ, eightfold, as a PNG in the temp folder. @returns its path */
export function writeDifferenceMap(a: ArrayLike<number>, b: ArrayLike<number>, width: number, height: number, name: string): string {
  const data = Uint8ClampedArray.from(a, (value, i) => (i % 4 === 3 ? 255 : 8 * Math.abs(value - (b[i] ?? 0))))
  const path = join(mkdtempSync(join(tmpdir(), 'halfstop-difference-')), `${name}.png`)
  writeFileSync(path, encode({ width, height, data, channels: 4, depth: 8 }))
  return path
}
