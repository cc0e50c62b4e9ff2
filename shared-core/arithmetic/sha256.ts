/**
 * SHA-256 (FIPS 180-4). Written out because a page that came over plain http has no `crypto.subtle`, and because a name
 * for kept bytes has to be the same word in page, worker and server. About 20 ms for a megabyte.
 */

/** First 32 bits of the fractional parts of the cube roots of the first 64 primes (FIPS 180-4, 4.2.2). */
const ROUND_CONSTANTS = fractionsOfRoots(64, 3)
/** The same of the square roots of the first 8 primes (5.3.3). */
const INITIAL = fractionsOfRoots(8, 2)

/** The SHA-256 of bytes, or of a text's UTF-8, in lower-case hexadecimal. */
export function sha256(content: Uint8Array | string): string {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content
  const padded = padding(bytes)
  const view = new DataView(padded.buffer)
  const state = Uint32Array.from(INITIAL)
  const schedule = new Uint32Array(64)
  for (let offset = 0; offset < padded.length; offset += 64) compress(state, schedule, view, offset)
  return Array.from(state, (word) => word.toString(16).padStart(8, '0')).join('')
}

/** A one bit, zeros, and the length in bits, up to whole blocks of 64 bytes (5.1.1). */
function padding(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64)
  padded.set(bytes)
  padded[bytes.length] = 0x80
  const view = new DataView(padded.buffer)
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 0x2000_0000))
  view.setUint32(padded.length - 4, (bytes.length << 3) >>> 0)
  return padded
}

/** One block into the state (6.2.2). */
function compress(state: Uint32Array, schedule: Uint32Array, view: DataView, offset: number): void {
  for (let t = 0; t < 16; t++) schedule[t] = view.getUint32(offset + 4 * t)
  for (let t = 16; t < 64; t++) {
    const early = schedule[t - 15]!
    const late = schedule[t - 2]!
    const smallEarly = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3)
    const smallLate = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10)
    schedule[t] = schedule[t - 16]! + smallEarly + schedule[t - 7]! + smallLate
  }
  let a = state[0]!, b = state[1]!, c = state[2]!, d = state[3]!
  let e = state[4]!, f = state[5]!, g = state[6]!, h = state[7]!
  for (let t = 0; t < 64; t++) {
    const largeE = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)
    const first = (h + largeE + ((e & f) ^ (~e & g)) + ROUND_CONSTANTS[t]! + schedule[t]!) | 0
    const largeA = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)
    const second = (largeA + ((a & b) ^ (a & c) ^ (b & c))) | 0
    h = g
    g = f
    f = e
    e = (d + first) | 0
    d = c
    c = b
    b = a
    a = (first + second) | 0
  }
  const added = [a, b, c, d, e, f, g, h]
  for (let i = 0; i < 8; i++) state[i] = state[i]! + added[i]!
}

function turned(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits))
}

/** In whole numbers, so that no engine's own root decides a bit. */
function fractionsOfRoots(count: number, degree: 2 | 3): Uint32Array {
  return Uint32Array.from(firstPrimes(count), (prime) => {
    const root = wholeRoot(BigInt(prime) << BigInt(32 * degree), degree)
    return Number(root & 0xffff_ffffn)
  })
}

/** The largest whole number whose power is not above `value`. */
function wholeRoot(value: bigint, degree: 2 | 3): bigint {
  let root = 0n
  for (let bit = 1n << 40n; bit > 0n; bit >>= 1n) {
    const tried = root | bit
    if ((degree === 2 ? tried * tried : tried * tried * tried) <= value) root = tried
  }
  return root
}

function firstPrimes(count: number): number[] {
  const primes: number[] = []
  for (let number = 2; primes.length < count; number++) {
    if (primes.every((prime) => number % prime !== 0)) primes.push(number)
  }
  return primes
}
