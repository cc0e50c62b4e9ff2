/** Grease pencils as they lie on a light table: whites and a yellow, all pale, none a colour that could be taken for the picture's. */
const TONES = ['#e8e3d3', '#e2cf93', '#d3d8d6', '#dfc3aa'] as const

/** A person's own pencil: always the same one for a seat. */
export function toneOf(seatId: string): string {
  let sum = 0
  for (const sign of seatId) sum = (sum * 31 + sign.codePointAt(0)!) % 65_521
  return TONES[sum % TONES.length]!
}
