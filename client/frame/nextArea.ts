interface InFrame {
  readonly frameX: number
  readonly frameY: number
}

const steps: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/**
 * The area an arrow key leads to: the one that costs least to reach, where going sideways costs twice what going the
 * key's way does. Undefined for other keys, and when nothing lies that way.
 */
export function nextAreaTowards<Area extends InFrame>(areas: readonly Area[], from: Area, key: string): Area | undefined {
  const step = steps[key]
  if (!step) return undefined
  let best: Area | undefined
  let leastCost = Infinity
  for (const area of areas) {
    const [dx, dy] = [area.frameX - from.frameX, area.frameY - from.frameY]
    const along = dx * step[0] + dy * step[1]
    const aside = Math.abs(dx * step[1]) + Math.abs(dy * step[0])
    if (area === from || along < 0.005) continue
    const cost = along + 2 * aside
    if (cost < leastCost) [best, leastCost] = [area, cost]
  }
  return best
}

/** The area nearest to a place; a finger's marks overlap, and the one on top need not be the one meant. @param aspect width over height of the Frame */
export function areaNearestTo<Area extends InFrame>(areas: readonly Area[], frameX: number, frameY: number, aspect: number): Area | undefined {
  const away = (area: Area) => ((area.frameX - frameX) * aspect) ** 2 + (area.frameY - frameY) ** 2
  return areas.reduce<Area | undefined>((best, area) => (best === undefined || away(area) < away(best) ? area : best), undefined)
}
