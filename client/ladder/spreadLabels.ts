/** Something that wants to be written at a height and needs room there. */
export interface Label {
  readonly wantedPixels: number
  readonly heightPixels: number
}

/**
 * Where to write labels so that none covers another: each as near to its wanted height as the others allow (least sum of
 * squared moves), all between `fromPixels` and `toPixels` as long as they fit there. Keeps the labels' order by wanted
 * height, and the given order among equals. Returns the centres, in the order given.
 *
 * Labels that would collide are pooled and share one offset (isotonic regression by pooling adjacent violators: Barlow,
 * Bartholomew, Bremner and Brunk, "Statistical Inference under Order Restrictions", 1972).
 */
export function spreadLabels(labels: readonly Label[], fromPixels: number, toPixels: number): readonly number[] {
  const order = labels.map((_, index) => index).sort((a, b) => wanted(labels, a) - wanted(labels, b) || a - b)

  // Heights above a label are known once the order is: subtracting them leaves offsets that only must not fall.
  let above = 0
  const stackedAt = new Map<number, number>()
  const pools: Pool[] = []
  for (const index of order) {
    const height = labels[index]?.heightPixels ?? 0
    const centreInStack = above + height / 2
    stackedAt.set(index, centreInStack)
    above += height
    pools.push({ members: [index], sum: wanted(labels, index) - centreInStack })
    mergeFalling(pools)
  }

  const room = Math.max(0, toPixels - fromPixels - above)
  const centres = new Array<number>(labels.length)
  for (const pool of pools) {
    const offset = Math.min(fromPixels + room, Math.max(fromPixels, pool.sum / pool.members.length))
    for (const index of pool.members) centres[index] = offset + (stackedAt.get(index) ?? 0)
  }
  return centres
}

interface Pool {
  readonly members: number[]
  readonly sum: number
}

function wanted(labels: readonly Label[], index: number): number {
  return labels[index]?.wantedPixels ?? 0
}

function mergeFalling(pools: Pool[]): void {
  for (;;) {
    const last = pools.at(-1)
    const before = pools.at(-2)
    if (!last || !before || before.sum / before.members.length <= last.sum / last.members.length) return
    pools.splice(-2, 2, { members: [...before.members, ...last.members], sum: before.sum + last.sum })
  }
}
