import { areaOf, type Item, type Placed, type Rectangle } from './rectangle.ts'

/** In which order items are taken, which free space each goes to, and which way the rest of that space is divided. */
export interface Habit {
  readonly order: Order
  readonly choice: Choice
  readonly division: Division
}

type Order = 'area' | 'long-side' | 'short-side' | 'girth'
type Choice = 'least-area' | 'least-short-side' | 'least-long-side' | 'nearest'
type Division = 'across' | 'along' | 'large-rest' | 'even-rest'

const orders: readonly Order[] = ['area', 'long-side', 'short-side', 'girth']
const choices: readonly Choice[] = ['least-area', 'least-short-side', 'least-long-side', 'nearest']
const divisions: readonly Division[] = ['across', 'along', 'large-rest', 'even-rest']

/** Every way of working that is tried. */
export const habits: readonly Habit[] = orders.flatMap((order) =>
  choices.flatMap((choice) => divisions.map((division) => ({ order, choice, division }))))

export interface Filled {
  readonly placed: readonly Placed[]
  readonly left: readonly Item[]
}

/**
 * Places items on one sheet so that a knife which only cuts straight from edge to edge can get them all: each item goes
 * into the corner of a free space, and one straight line divides what is left of that space. Guillotine packing as in
 * Jylänki, "A thousand ways to pack the bin" (2010).
 */
export function fillSheet(sheet: Pick<Rectangle, 'width' | 'height'>, items: readonly Item[], habit: Habit): Filled {
  let free: readonly Rectangle[] = [{ x: 0, y: 0, width: sheet.width, height: sheet.height }]
  const placed: Placed[] = []
  const left: Item[] = []
  for (const item of inOrder(items, habit.order)) {
    const spot = bestSpot(free, item, habit.choice)
    if (spot === null) {
      left.push(item)
      continue
    }
    placed.push({ id: item.id, x: spot.space.x, y: spot.space.y, width: spot.width, height: spot.height })
    free = [...free.filter((space) => space !== spot.space), ...restOf(spot, habit.division)]
  }
  return { placed, left }
}

export function inOrder(items: readonly Item[], order: Order): readonly Item[] {
  return [...items].sort((a, b) => measured(b, order) - measured(a, order) || areaOf(b) - areaOf(a) || (a.id < b.id ? -1 : 1))
}

function measured(item: Item, order: Order): number {
  switch (order) {
    case 'area':
      return areaOf(item)
    case 'long-side':
      return Math.max(item.width, item.height)
    case 'short-side':
      return Math.min(item.width, item.height)
    case 'girth':
      return item.width + item.height
  }
}

interface Spot {
  readonly space: Rectangle
  readonly width: number
  readonly height: number
}

function bestSpot(free: readonly Rectangle[], item: Item, choice: Choice): Spot | null {
  let best: Spot | null = null
  let least = Infinity
  for (const space of free) {
    for (const [width, height] of [[item.width, item.height], [item.height, item.width]] as const) {
      if (width > space.width || height > space.height) continue
      const cost = costOf(space, width, height, choice)
      if (cost < least) [best, least] = [{ space, width, height }, cost]
    }
  }
  return best
}

function costOf(space: Rectangle, width: number, height: number, choice: Choice): number {
  const [aside, above] = [space.width - width, space.height - height]
  switch (choice) {
    case 'least-area':
      return areaOf(space) - width * height
    case 'least-short-side':
      return Math.min(aside, above)
    case 'least-long-side':
      return Math.max(aside, above)
    case 'nearest':
      // Top edge first, then towards the left: sizes stay far below a million millimetres.
      return (space.y + height) * 1_000_000 + space.x
  }
}

function restOf({ space, width, height }: Spot, division: Division): readonly Rectangle[] {
  const [aside, above] = [space.width - width, space.height - height]
  const across = dividesAcross(division, aside * space.height, above * space.width, aside, above)
  const right = { x: space.x + width, y: space.y, width: aside, height: across ? height : space.height }
  const top = { x: space.x, y: space.y + height, width: across ? space.width : width, height: above }
  return [right, top].filter((rest) => rest.width > 0 && rest.height > 0)
}

/** Across: the line over the item runs the whole width of the space. */
function dividesAcross(division: Division, asideWhole: number, aboveWhole: number, aside: number, above: number): boolean {
  switch (division) {
    case 'across':
      return true
    case 'along':
      return false
    case 'large-rest':
      return aboveWhole >= asideWhole
    case 'even-rest':
      return aside >= above
  }
}
