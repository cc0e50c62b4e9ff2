/** 32 symbols, so that five bits of each random byte pick one without bias; no vowels, so that no words appear. */
const SYMBOLS = '0123456789bcdfghjklmnpqrstvwxyzB'
const LENGTH = 16

/**
 * A fresh key for a record of the plan: 80 random bits, so that people who add things offline at the same moment do
 * not meet on one key.
 */
export function newId(): string {
  const bytes = globalThis.crypto.getRandomValues(new Uint8Array(LENGTH))
  return Array.from(bytes, (byte) => SYMBOLS[byte & 31]).join('')
}
