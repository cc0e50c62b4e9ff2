import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'

/** 144 bits from the system's generator, in 24 characters that survive any address bar. */
const SECRET_BYTES = 18
/** Public ids need not be secret, only never meet: 96 bits. */
const ID_BYTES = 12

export function newSecret(): string {
  return randomBytes(SECRET_BYTES).toString('base64url')
}

export function newPublicId(): string {
  return randomBytes(ID_BYTES).toString('base64url')
}

/**
 * What is stored in place of a secret. A plain SHA-256 suffices: a secret of 144 random bits cannot be found by trying,
 * which salting and slow hashes are for.
 */
export function hashOfSecret(secret: string): Uint8Array {
  return createHash('sha256').update(secret, 'utf8').digest()
}

/** Compares in a time that does not tell how much was right. */
export function isSameHash(one: Uint8Array, other: Uint8Array): boolean {
  return one.byteLength === other.byteLength && timingSafeEqual(one, other)
}
