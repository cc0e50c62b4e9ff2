import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import { canonicalJson } from '../../shared-core/notes/canonical.ts'

describe('SHA-256', () => {
  // NIST, Cryptographic Standards and Guidelines, example values for SHA-256: one block and two blocks.
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
  ])('of %s is what the standard says', (text, expected) => {
    expect(sha256(text)).toBe(expected)
  })

  it('of any bytes is what OpenSSL (node:crypto) says, around every block length too', () => {
    const check = (bytes: Uint8Array): void => { expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex')) }
    for (let length = 0; length < 200; length++) check(new Uint8Array(length).fill(length))
    fc.assert(fc.property(fc.uint8Array({ maxLength: 2_000 }), check))
  })
})

describe('canonical JSON', () => {
  // RFC 8785, 3.2.3: the sample object and the order of its values.
  it('sorts keys by UTF-16 code units as RFC 8785 shows', () => {
    const sample = {
      '\u20ac': 'Euro Sign', '\r': 'Carriage Return', '\ufb33': 'Hebrew Letter Dalet With Dagesh', '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face', '\u0080': 'Control', '\u00f6': 'Latin Small Letter O With Diaeresis',
    }
    expect(Object.values(JSON.parse(`[${canonicalJson(sample).slice(1, -1).replaceAll(/("(?:[^"\\]|\\.)*"):("(?:[^"\\]|\\.)*")/gu, '$2')}]`) as string[])).toEqual([
      'Carriage Return', 'One', 'Control', 'Latin Small Letter O With Diaeresis', 'Euro Sign', 'Emoji: Grinning Face', 'Hebrew Letter Dalet With Dagesh',
    ])
  })

  it('is the same text whatever the order of keys, and says the same as JSON', () => {
    expect(canonicalJson({ b: [1, { d: null, c: 1e21 }], a: 'é' })).toBe('{"a":"é","b":[1,{"c":1e+21,"d":null}]}')
    fc.assert(fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)))
    }))
  })

  it('refuses what JSON cannot say', () => {
    for (const value of [undefined, Number.NaN, Infinity, () => 1, { a: undefined }]) expect(() => canonicalJson(value)).toThrow(TypeError)
  })
})
