/** Kinds of picture that may be attached. */
export const PICTURE_TYPES = ['image/png', 'image/jpeg', 'image/webp'] as const
export type PictureType = (typeof PICTURE_TYPES)[number]

/**
 * What a file is by its first bytes, whatever its sender calls it: PNG (specification, 5.2), JPEG (start of image and
 * the first marker, ITU-T T.81 B.1.1.3), WebP (RIFF container of that form, RFC 9649 2.4). Null: none of these.
 */
export function pictureTypeOf(bytes: Uint8Array): PictureType | null {
  const starts = (at: number, ...expected: readonly number[]) => expected.every((byte, index) => bytes[at + index] === byte)
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png'
  if (starts(0, 0xff, 0xd8, 0xff)) return 'image/jpeg'
  if (starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50)) return 'image/webp'
  return null
}
