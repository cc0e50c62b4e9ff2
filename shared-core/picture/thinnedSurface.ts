import type { SubjectAsset } from '../subject/asset/format.ts'
import type { SeenSurface } from './seenSurface.ts'

/**
 * A seen surface with some of its slots only, and how values of all slots are read off those: for a picture under a
 * hand, where light is worked out on few and drawn between.
 */
export interface ThinnedSurface {
  readonly few: SeenSurface
  /** PARENTS slots of `few` for each slot of the whole; their weights add up to 1. */
  readonly parents: Uint16Array
  readonly weights: Float32Array
}

/** Slots of the few that each slot of the whole is read off. */
const PARENTS = 4
/** No two of the few are within so many edges of each other, where they are of one material. */
const APART = 3
/** A slot is read off those of the few that are within so many edges: one more, or patches would show. */
const REACH = 4

const thinned = new WeakMap<SeenSurface, ThinnedSurface>()

/** The same thinned surface for the same seen one. */
export function thinnedSurface(seen: SeenSurface): ThinnedSurface {
  let found = thinned.get(seen)
  if (!found) thinned.set(seen, (found = thin(seen)))
  return found
}

/** Values by slot of the few, read off for every slot of the whole: four sets together, since a slot's parents are the same for all. */
export function spreadOverAll(
  { parents, weights }: ThinnedSurface, one: Float32Array, two: Float32Array, three: Float32Array, four: Float32Array,
): readonly [Float32Array, Float32Array, Float32Array, Float32Array] {
  const count = parents.length / PARENTS
  const ofOne = new Float32Array(count)
  const ofTwo = new Float32Array(count)
  const ofThree = new Float32Array(count)
  const ofFour = new Float32Array(count)
  for (let slot = 0, p = 0; slot < count; slot++, p += PARENTS) {
    const a = parents[p]!
    const b = parents[p + 1]!
    const c = parents[p + 2]!
    const d = parents[p + 3]!
    const wa = weights[p]!
    const wb = weights[p + 1]!
    const wc = weights[p + 2]!
    const wd = weights[p + 3]!
    ofOne[slot] = wa * one[a]! + wb * one[b]! + wc * one[c]! + wd * one[d]!
    ofTwo[slot] = wa * two[a]! + wb * two[b]! + wc * two[c]! + wd * two[d]!
    ofThree[slot] = wa * three[a]! + wb * three[b]! + wc * three[c]! + wd * three[d]!
    ofFour[slot] = wa * four[a]! + wb * four[b]! + wc * four[c]! + wd * four[d]!
  }
  return [ofOne, ofTwo, ofThree, ofFour]
}

function thin(seen: SeenSurface): ThinnedSurface {
  const parents = new Uint16Array(PARENTS * seen.count)
  const weights = new Float32Array(PARENTS * seen.count)
  const isNear = new Uint8Array(seen.count)
  const walk = new Walk(seen)
  const chosen: number[] = []
  for (let slot = 0; slot < seen.count; slot++) {
    if (isNear[slot]) continue
    walk.from(slot)
    for (let i = 0; i < walk.count; i++) {
      const reached = walk.slots[i]!
      if (walk.edges[i]! <= APART) isNear[reached] = 1
      offer(parents, weights, reached, chosen.length, likeness(seen, slot, reached))
    }
    chosen.push(slot)
  }
  evened(weights)
  return { few: only(seen, Uint32Array.from(chosen)), parents, weights }
}

/** Nearer and more alike in direction weighs more: from 1 down, never 0. */
function likeness({ restPositions: p, restNormals: n }: SeenSurface, a: number, b: number): number {
  const [i, j] = [3 * a, 3 * b]
  const [x, y, z] = [p[i]! - p[j]!, p[i + 1]! - p[j + 1]!, p[i + 2]! - p[j + 2]!]
  const cos = Math.max(0.1, n[i]! * n[j]! + n[i + 1]! * n[j + 1]! + n[i + 2]! * n[j + 2]!)
  const square = cos * cos
  return (square * square) / (NEAR_SQUARE_METRES + x * x + y * y + z * z)
}

/** Distances below this, 5 mm, hardly tell places apart: without it each of the few would stand out as a dot. */
const NEAR_SQUARE_METRES = 25e-6

/** Keeps the heaviest parents of a slot. */
function offer(parents: Uint16Array, weights: Float32Array, slot: number, parent: number, weight: number): void {
  const first = PARENTS * slot
  let lightest = first
  for (let at = first + 1; at < first + PARENTS; at++) if (weights[at]! < weights[lightest]!) lightest = at
  if (weight <= weights[lightest]!) return
  parents[lightest] = parent
  weights[lightest] = weight
}

function evened(weights: Float32Array): void {
  for (let first = 0; first < weights.length; first += PARENTS) {
    let sum = 0
    for (let at = first; at < first + PARENTS; at++) sum += weights[at]!
    for (let at = first; at < first + PARENTS; at++) weights[at] = weights[at]! / sum
  }
}

/** The slots of one material within REACH edges of one of them, itself first. */
class Walk {
  count = 0
  readonly slots: Uint32Array
  /** Edges from the first to each. */
  readonly edges: Uint8Array
  private readonly slotOf: Int32Array
  private readonly lastFrom: Int32Array
  private readonly neighbours: Neighbours

  constructor(private readonly seen: SeenSurface) {
    this.slots = new Uint32Array(seen.count)
    this.edges = new Uint8Array(seen.count)
    this.slotOf = new Int32Array(seen.subject.positions.length / 3).fill(-1)
    this.lastFrom = new Int32Array(seen.count).fill(-1)
    this.neighbours = neighboursOf(seen.subject.asset)
    for (let slot = 0; slot < seen.count; slot++) this.slotOf[seen.vertices[slot]!] = slot
  }

  from(first: number): void {
    const { seen: { vertices, materials }, slots, edges, slotOf, lastFrom, neighbours: { starts, others } } = this
    slots[0] = first
    edges[0] = 0
    lastFrom[first] = first
    this.count = 1
    for (let i = 0; i < this.count && edges[i]! < REACH; i++) {
      const vertex = vertices[slots[i]!]!
      for (let at = starts[vertex]!; at < starts[vertex + 1]!; at++) {
        const next = slotOf[others[at]!]!
        if (next < 0 || lastFrom[next] === first || materials[next] !== materials[first]) continue
        lastFrom[next] = first
        slots[this.count] = next
        edges[this.count++] = edges[i]! + 1
      }
    }
  }
}

/** The vertices that share an edge with each: `others` from `starts[v]` to `starts[v + 1]`. */
interface Neighbours {
  readonly starts: Uint32Array
  readonly others: Uint32Array
}

const neighboursByAsset = new WeakMap<SubjectAsset, Neighbours>()

/** From each facet the next corner round: inside a closed mesh every edge is met once each way. */
function neighboursOf(asset: SubjectAsset): Neighbours {
  let found = neighboursByAsset.get(asset)
  if (found) return found
  const { triangles } = asset
  const starts = new Uint32Array(asset.positions.length / 3 + 1)
  for (const vertex of triangles) starts[vertex + 1] = starts[vertex + 1]! + 1
  for (let v = 1; v < starts.length; v++) starts[v] = starts[v]! + starts[v - 1]!
  const others = new Uint32Array(triangles.length)
  const filled = starts.slice()
  for (let i = 0; i < triangles.length; i += 3) {
    for (let c = 0; c < 3; c++) {
      const vertex = triangles[i + c]!
      const at = filled[vertex]!
      others[at] = triangles[i + ((c + 1) % 3)]!
      filled[vertex] = at + 1
    }
  }
  found = { starts, others }
  neighboursByAsset.set(asset, found)
  return found
}

function only(seen: SeenSurface, slots: Uint32Array): SeenSurface {
  const one = <Values extends Uint8Array | Uint16Array | Uint32Array | Float32Array>(from: Values, into: Values): Values => {
    slots.forEach((slot, i) => { into[i] = from[slot]! })
    return into
  }
  const three = (from: Float32Array): Float32Array => {
    const into = new Float32Array(3 * slots.length)
    slots.forEach((slot, i) => { for (let k = 0; k < 3; k++) into[3 * i + k] = from[3 * slot + k]! })
    return into
  }
  const count = slots.length
  return {
    ...seen, count,
    vertices: one(seen.vertices, new Uint32Array(count)),
    materials: one(seen.materials, new Uint8Array(count)),
    facing: one(seen.facing, new Float32Array(count)),
    steps: one(seen.steps, new Uint8Array(count)),
    regionOf: one(seen.regionOf, new Uint16Array(count)),
    positions: three(seen.positions),
    restPositions: three(seen.restPositions),
    restNormals: three(seen.restNormals),
    restSights: three(seen.restSights),
    strands: three(seen.strands),
  }
}
