/** Repeatable value noise: the same bits in every engine, from integer arithmetic alone. */
function lattice(i: number, j: number): number {
  let h = Math.imul(i, 0x27d4eb2d) ^ Math.imul(j, 0x165667b1)
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d)
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39)
  h ^= h >>> 15
  return (h & 0xffff) / 0x8000 - 1
}

const fade = (t: number): number => t * t * (3 - 2 * t)

/** Smooth noise over a plane, -1 to 1, features about one unit wide. */
export function noise(u: number, v: number): number {
  const i = Math.floor(u)
  const j = Math.floor(v)
  const s = fade(u - i)
  const t = fade(v - j)
  const near = lattice(i, j) * (1 - s) + lattice(i + 1, j) * s
  const far = lattice(i, j + 1) * (1 - s) + lattice(i + 1, j + 1) * s
  return near * (1 - t) + far * t
}
