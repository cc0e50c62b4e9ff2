/** Where a mark's number stands, from the place it marks, in pixels to its middle. */
export type MarkOffset = readonly [x: number, y: number]

/** Up and to the right where there is room; else the next way round, then further off. */
const AROUND: readonly MarkOffset[] = [[1, -1], [-1, -1], [1, 1], [-1, 1], [0, -1.9], [1.9, 0], [-1.9, 0], [0, 1.9], [2, -2], [-2, -2], [2, 2], [-2, 2]]

/**
 * Numbers beside their places so that none lies on another, or over the edge, while there is any room.
 * @param places in pixels of the Frame, the first placed first
 * @param faceSize of a number, in pixels
 */
export function spreadMarks(
  places: readonly { readonly x: number; readonly y: number }[], widthPixels: number, heightPixels: number, faceSize: number,
): readonly MarkOffset[] {
  const reach = faceSize * 0.75
  const taken: { readonly x: number; readonly y: number }[] = []
  return places.map(({ x, y }) => {
    const offsets = AROUND.map(([dx, dy]): MarkOffset => [dx * reach, dy * reach])
    const isFree = ([dx, dy]: MarkOffset): boolean => {
      const [cx, cy, half] = [x + dx, y + dy, faceSize / 2]
      if (cx < half || cy < half || cx > widthPixels - half || cy > heightPixels - half) return false
      return taken.every((other) => Math.abs(other.x - cx) >= faceSize || Math.abs(other.y - cy) >= faceSize)
    }
    const offset = offsets.find(isFree) ?? offsets[0]!
    taken.push({ x: x + offset[0], y: y + offset[1] })
    return offset
  })
}
