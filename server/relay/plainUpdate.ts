import * as decoding from 'lib0/decoding'

/** Bits of a struct's first byte, and kinds of content (Yjs, INTERNALS.md and the encoders of its version 1 format). */
const KIND = 31
const HAS_KEY = 32
const HAS_RIGHT = 64
const HAS_LEFT = 128
const GC = 0
const DELETED = 1
const STRING = 4
const TYPE = 7
const ANY = 8
const SKIP = 10
/** Array, map and text; the others carry a name. */
const MOST_PLAIN_TYPE = 2
/** Kinds of a value (lib0, encoding.writeAny). */
const VALUE = { undefined: 127, null: 126, integer: 125, float32: 124, float64: 123, false: 121, true: 120, string: 119 } as const

class NotPlain extends Error {}

/**
 * Whether the bytes are an update throughout, to the last byte, made of what a hand's edits are made of: numbers, flags
 * and plain ASCII text in maps, arrays and texts. Of others it says no without a closer look, and whoever asks decodes
 * them. It makes nothing of what it reads, which is why it takes a tenth of the time of decoding.
 */
export function isPlainUpdate(bytes: Uint8Array): boolean {
  const decoder = decoding.createDecoder(bytes)
  try {
    for (let clients = decoding.readVarUint(decoder); clients > 0; clients--) skipClient(decoder)
    for (let clients = decoding.readVarUint(decoder); clients > 0; clients--) {
      decoding.readVarUint(decoder)
      for (let deletions = decoding.readVarUint(decoder); deletions > 0; deletions--) skipNumbers(decoder, 2)
    }
    return decoder.pos === bytes.length
  } catch {
    return false
  }
}

function skipClient(decoder: decoding.Decoder): void {
  const structs = decoding.readVarUint(decoder)
  skipNumbers(decoder, 2)
  for (let left = structs; left > 0; left--) skipStruct(decoder)
}

function skipStruct(decoder: decoding.Decoder): void {
  const info = decoding.readUint8(decoder)
  const kind = info & KIND
  if (info === SKIP || kind === GC) return skipNumbers(decoder, 1)
  if ((info & HAS_LEFT) !== 0) skipNumbers(decoder, 2)
  if ((info & HAS_RIGHT) !== 0) skipNumbers(decoder, 2)
  if ((info & (HAS_LEFT | HAS_RIGHT)) === 0) {
    if (decoding.readVarUint(decoder) === 1) skipText(decoder)
    else skipNumbers(decoder, 2)
    if ((info & HAS_KEY) !== 0) skipText(decoder)
  }
  if (kind === DELETED) return skipNumbers(decoder, 1)
  if (kind === STRING) return skipText(decoder)
  if (kind === TYPE && decoding.readVarUint(decoder) <= MOST_PLAIN_TYPE) return
  if (kind !== ANY) throw new NotPlain()
  for (let values = decoding.readVarUint(decoder); values > 0; values--) skipValue(decoder)
}

function skipValue(decoder: decoding.Decoder): void {
  switch (decoding.readUint8(decoder)) {
    case VALUE.undefined: case VALUE.null: case VALUE.false: case VALUE.true: return
    case VALUE.integer: decoding.readVarInt(decoder); return
    case VALUE.float32: return skipBytes(decoder, 4)
    case VALUE.float64: return skipBytes(decoder, 8)
    case VALUE.string: return skipText(decoder)
    default: throw new NotPlain()
  }
}

function skipNumbers(decoder: decoding.Decoder, count: number): void {
  for (let left = count; left > 0; left--) decoding.readVarUint(decoder)
}

function skipText(decoder: decoding.Decoder): void {
  const end = decoding.readVarUint(decoder) + decoder.pos
  if (end > decoder.arr.length) throw new NotPlain()
  for (let at = decoder.pos; at < end; at++) if ((decoder.arr[at] ?? 128) > 127) throw new NotPlain()
  decoder.pos = end
}

function skipBytes(decoder: decoding.Decoder, count: number): void {
  decoder.pos += count
  if (decoder.pos > decoder.arr.length) throw new NotPlain()
}
