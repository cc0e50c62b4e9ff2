/** The middle of one connected part of a picture, where a letter has most room around it. */
export interface Region {
  readonly kind: number
  /** 0-1 from the left and the top. */
  readonly frameX: number
  readonly frameY: number
  /** Pixels from there to the region's nearest edge. */
  readonly roomPixels: number
}

/** Class of pixels that belong to no region. */
export const NO_REGION = 0

const MOST_REGIONS = 24

/**
 * Connected parts of equal class that have room for a letter, the roomiest first.
 * @param kinds one class a pixel, NO_REGION for none
 * @param leastRoomPixels parts with less than this around their middle are left out
 */
export function regionsOf(kinds: Uint8Array, width: number, height: number, leastRoomPixels: number): readonly Region[] {
  const room = roomAround(kinds, width, height)
  const names = namesOf(kinds, width, height)
  const roomiest = new Map<number, number>()
  for (let p = 0; p < kinds.length; p++) {
    if (kinds[p] === NO_REGION || room[p]! < leastRoomPixels) continue
    const best = roomiest.get(names[p]!)
    if (best === undefined || room[p]! > room[best]!) roomiest.set(names[p]!, p)
  }
  return [...roomiest.values()]
    .sort((a, b) => room[b]! - room[a]! || a - b)
    .slice(0, MOST_REGIONS)
    .map((p) => ({
      kind: kinds[p]!, frameX: ((p % width) + 0.5) / width, frameY: (Math.floor(p / width) + 0.5) / height, roomPixels: room[p]!,
    }))
}

/** Steps from each pixel to the nearest of another class or to the picture's edge (chessboard distance in two passes, Rosenfeld and Pfaltz 1966). */
function roomAround(kinds: Uint8Array, width: number, height: number): Uint16Array {
  const room = new Uint16Array(kinds.length)
  const reach = (p: number, q: number): number => (kinds[q] === kinds[p] ? room[q]! + 1 : 1)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x
      const atEdge = x === 0 || y === 0 || x === width - 1
      room[p] = atEdge ? 1 : Math.min(reach(p, p - 1), reach(p, p - width), reach(p, p - width - 1), reach(p, p - width + 1))
    }
  }
  for (let y = height - 1; y >= 0; y--) {
    for (let x = width - 1; x >= 0; x--) {
      const p = y * width + x
      const atEdge = x === width - 1 || y === height - 1 || x === 0
      room[p] = atEdge ? 1 : Math.min(room[p]!, reach(p, p + 1), reach(p, p + width), reach(p, p + width + 1), reach(p, p + width - 1))
    }
  }
  return room
}

/** One name for all pixels of a connected part: the first of its pixels. */
function namesOf(kinds: Uint8Array, width: number, height: number): Uint32Array {
  const names = Uint32Array.from(kinds, (_, p) => p)
  const first = (p: number): number => {
    let root = p
    while (names[root] !== root) root = names[root]!
    while (names[p] !== root) {
      const next = names[p]!
      names[p] = root
      p = next
    }
    return root
  }
  const join = (p: number, q: number): void => {
    if (kinds[p] !== kinds[q]) return
    const [a, b] = [first(p), first(q)]
    names[Math.max(a, b)] = Math.min(a, b)
  }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x
      if (x > 0) join(p, p - 1)
      if (y > 0) join(p, p - width)
    }
  }
  for (let p = 0; p < names.length; p++) names[p] = first(p)
  return names
}
