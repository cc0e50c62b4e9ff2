import { z } from 'zod'
import { NOTES_LIMITS } from './limits.ts'

/** Bounded texts and numbers that notes are made of, beside those of the plan. */

/** What somebody wrote: at least one sign that can be seen, no control characters but line breaks and tabs. */
export const writtenText = z
  .string()
  .trim()
  .min(1)
  .max(NOTES_LIMITS.textCharacters)
  .regex(/^[^\p{Cf}\p{Co}\p{Cs}\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]*$/u, 'letters and signs that can be seen')

/** The same, or nothing. */
export const writtenOrEmpty = z.union([z.literal(''), writtenText])

/** SHA-256 in lower-case hexadecimal: the name under which the relay keeps a thing. */
export const sha256Hex = z.string().regex(/^[0-9a-f]{64}$/, 'a SHA-256 in hexadecimal')

/** Milliseconds since 1970, within what a Date can say. */
export const momentMs = z.number().int().min(0).max(8_640_000_000_000_000)

/** A share of the Frame, from its left or its top. */
export const frameShare = z.number().min(0).max(1)
