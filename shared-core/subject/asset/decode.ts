import { WORDS } from './selfShadow.ts'
import {
  FORMAT_VERSION, HEADER_BYTES, MAGIC, POSITION_LEVELS, type SubjectAsset, forecastOf, horizonMasks, maskOf, normalOf,
} from './format.ts'

/** Reads the bytes that `encodeSubject` writes. Throws a RangeError for another kind or version of file. */
export function decodeSubject(bytes: Uint8Array): SubjectAsset {
  const header = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.byteLength < HEADER_BYTES || header.getUint32(0, true) !== MAGIC) {
    throw new RangeError('This is not a subject file.')
  }
  if (header.getUint32(4, true) !== FORMAT_VERSION) throw new RangeError('This subject file is of another version.')
  const count = header.getUint32(8, true)
  const corners = header.getUint32(12, true) * 3
  const length = HEADER_BYTES + corners * 2 + count * 11 + header.getUint32(40, true)
  if (bytes.byteLength !== length) throw new RangeError('The subject file is cut short.')
  let at = HEADER_BYTES
  const rows = (length: number): Int32Array => {
    const out = new Int32Array(length)
    for (let i = 0; i < length; i++) {
      const folded = bytes[at + i]! | (bytes[at + length + i]! << 8)
      out[i] = (folded >>> 1) ^ -(folded & 1)
    }
    at += 2 * length
    return out
  }

  const triangles = new Uint32Array(corners)
  const below = rows(corners)
  for (let i = 0, next = 0; i < corners; i++) {
    triangles[i] = (next - below[i]!) & 65535
    if (triangles[i] === next) next++
  }
  const { near, beside, opposite } = forecastOf(triangles, count)

  const steps = new Uint16Array(count * 3)
  const positions = new Float32Array(count * 3)
  const moves = rows(count * 3)
  for (let axis = 0; axis < 3; axis++) {
    const low = header.getFloat32(16 + axis * 4, true)
    const size = header.getFloat32(28 + axis * 4, true)
    for (let v = 0; v < count; v++) {
      const a = near[v]! < 0 ? 0 : steps[near[v]! * 3 + axis]!
      const slope = opposite[v]! < 0 ? 0 : steps[beside[v]! * 3 + axis]! - steps[opposite[v]! * 3 + axis]!
      const step = (moves[axis * count + v]! + a + slope) & 65535
      steps[v * 3 + axis] = step
      positions[v * 3 + axis] = low + (step / POSITION_LEVELS) * size
    }
  }

  const normalSteps = new Uint16Array(count * 2)
  const normals = new Float32Array(count * 3)
  const turns = rows(count * 2)
  for (let v = 0; v < count; v++) {
    for (let i = 0; i < 2; i++) {
      normalSteps[v * 2 + i] = turns[i * count + v]! + (near[v]! < 0 ? 0 : normalSteps[near[v]! * 2 + i]!)
    }
    normalOf(normalSteps[v * 2]!, normalSteps[v * 2 + 1]!, normals, v * 3)
  }

  const materials = bytes.slice(at, at + count)
  at += count
  const selfShadow = shadowFrom(bytes, at, near)
  const masks = horizonMasks()
  for (let v = 0; v < count; v++) {
    const mask = maskOf(normalSteps[v * 2]!, normalSteps[v * 2 + 1]!) * WORDS
    for (let w = 0; w < WORDS; w++) selfShadow[v * WORDS + w] = selfShadow[v * WORDS + w]! | masks[mask + w]!
  }
  return { positions, normals, triangles, materials, selfShadow }
}

/** Unfolds the changes that `encodeSubject` wrote: each vertex starts as a copy of the one it is predicted from. */
function shadowFrom(bytes: Uint8Array, from: number, near: Int32Array): Uint32Array {
  const bits = new Uint32Array(near.length * WORDS)
  let at = from
  for (let v = 0; v < near.length; v++) {
    const parent = near[v]!
    if (parent >= 0) bits.copyWithin(v * WORDS, parent * WORDS, parent * WORDS + WORDS)
    let cell = -1
    for (let byte = bytes[at++]!; byte !== 0; byte = bytes[at++]!) {
      let gap = byte & 127
      for (let shift = 7; byte & 128; shift += 7) {
        byte = bytes[at++]!
        gap |= (byte & 127) << shift
      }
      cell += gap
      const word = v * WORDS + (cell >> 5)
      bits[word] = bits[word]! ^ (1 << (cell & 31))
    }
  }
  return bits
}
