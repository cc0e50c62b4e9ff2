import type { Vector } from '../arithmetic/vector.ts'
import { strandDirectionAt } from '../subject/field/subjectField.ts'
import { meshMaterials } from '../subject/mesh/subjectMesh.ts'
import { opennessOf, type Openness } from './openness.ts'
import { toRest, type PosedSubject } from './posedSubject.ts'

/** Head weights are told apart in so many steps when directions are turned back to rest. */
const TURN_STEPS = 16
export const MESH_HAIR = meshMaterials.indexOf('hair')
export const MESH_EYE = meshMaterials.indexOf('eye')

/**
 * The vertices that some sample of the picture rests on, as runs of numbers by slot. Directions are kept in the rest
 * frame of the part they belong to, because there the subject's shadow on itself is known.
 */
export interface SeenSurface {
  readonly subject: PosedSubject
  readonly count: number
  /** Vertex of the asset by slot, ascending. */
  readonly vertices: Uint32Array
  readonly materials: Uint8Array
  /** Standing in the set. */
  readonly positions: Float32Array
  /** The same, the normal and the way to the camera, turned to the rest frame of the slot's step. */
  readonly restPositions: Float32Array
  readonly restNormals: Float32Array
  readonly restSights: Float32Array
  /** Cosine between normal and the way to the camera, at least 0.02. */
  readonly facing: Float32Array
  /** Which of `turns` takes the set to the slot's rest frame. */
  readonly steps: Uint8Array
  /** Rows of each rotation, nine numbers; null where no slot uses it. */
  readonly turns: readonly (Float64Array | null)[]
  /** Unit direction of the strands at rest, for hair; 0 elsewhere. */
  readonly strands: Float32Array
  /** Which of `regions` the slot lies in. */
  readonly regionOf: Uint16Array
  readonly regions: readonly Region[]
  readonly openness: Openness
  /** Middle and radius of a sphere around all slots. */
  readonly middle: Vector
  readonly radiusMetres: number
}

/** A small cube of one rest frame: from within it, what shines lies in about the same directions. */
export interface Region {
  readonly step: number
  readonly middle: Vector
  readonly halfMetres: number
}

const REGION_METRES = 0.08
/** No two places of a region are further apart: its diagonal. */
export const REGION_REACH_METRES = 0.14

/** @param used 1 for each vertex of the asset that is seen */
export function seenSurface(subject: PosedSubject, used: Uint8Array, eye: Vector): SeenSurface {
  let count = 0
  for (const flag of used) count += flag
  const vertices = new Uint32Array(count)
  for (let v = 0, slot = 0; v < used.length; v++) if (used[v]) vertices[slot++] = v
  const seen = {
    subject, count, vertices,
    materials: new Uint8Array(count),
    positions: new Float32Array(3 * count),
    restPositions: new Float32Array(3 * count),
    restNormals: new Float32Array(3 * count),
    restSights: new Float32Array(3 * count),
    facing: new Float32Array(count),
    steps: new Uint8Array(count),
    strands: new Float32Array(3 * count),
  }
  const turns: (Float64Array | null)[] = Array.from({ length: TURN_STEPS + 1 }, () => null)
  const strandsOfAsset = strandsOf(subject)
  for (let slot = 0; slot < count; slot++) {
    const v = vertices[slot]!
    const step = Math.round(subject.headWeights[v]! * TURN_STEPS)
    const turn = (turns[step] ??= Float64Array.from(toRest(subject, step / TURN_STEPS).flat()))
    seen.steps[slot] = step
    seen.materials[slot] = subject.asset.materials[v]!
    place(seen, slot, v, turn, eye)
    if (seen.materials[slot] === MESH_HAIR) seen.strands.set(strandAtVertex(subject, strandsOfAsset, v), 3 * slot)
  }
  return { ...seen, turns, openness: opennessOf(subject.asset, vertices), ...regionsOf(seen.restPositions, seen.steps), ...sphereAround(seen.positions) }
}

type Filling = Pick<SeenSurface, 'subject' | 'positions' | 'restPositions' | 'restNormals' | 'restSights' | 'facing'>

function place(seen: Filling, slot: number, v: number, m: Float64Array, eye: Vector): void {
  const { positions, normals } = seen.subject
  const at = 3 * slot
  const x = positions[3 * v]!
  const y = positions[3 * v + 1]!
  const z = positions[3 * v + 2]!
  const nx = normals[3 * v]!
  const ny = normals[3 * v + 1]!
  const nz = normals[3 * v + 2]!
  let vx = eye[0] - x
  let vy = eye[1] - y
  let vz = eye[2] - z
  const near = 1 / Math.sqrt(vx * vx + vy * vy + vz * vz)
  vx *= near
  vy *= near
  vz *= near
  seen.positions[at] = x
  seen.positions[at + 1] = y
  seen.positions[at + 2] = z
  for (let k = 0; k < 3; k++) {
    const [a, b, c] = [m[3 * k]!, m[3 * k + 1]!, m[3 * k + 2]!]
    seen.restPositions[at + k] = a * x + b * y + c * z
    seen.restNormals[at + k] = a * nx + b * ny + c * nz
    seen.restSights[at + k] = a * vx + b * vy + c * vz
  }
  seen.facing[slot] = Math.max(0.02, nx * vx + ny * vy + nz * vz)
}

function regionsOf(restPositions: Float32Array, steps: Uint8Array): { regionOf: Uint16Array, regions: readonly Region[] } {
  const regionOf = new Uint16Array(steps.length)
  const regions: Region[] = []
  const numbers = new Map<number, number>()
  for (let slot = 0; slot < steps.length; slot++) {
    const [i, j, k] = [0, 1, 2].map((axis) => Math.floor(restPositions[3 * slot + axis]! / REGION_METRES)) as [number, number, number]
    // Far apart enough for any set: 2048 cubes each way.
    const key = (((i + 1024) * 2048 + j + 1024) * 2048 + k + 1024) * 32 + steps[slot]!
    let number = numbers.get(key)
    if (number === undefined) {
      numbers.set(key, (number = regions.length))
      regions.push({
        step: steps[slot]!, halfMetres: REGION_METRES / 2,
        middle: [(i + 0.5) * REGION_METRES, (j + 0.5) * REGION_METRES, (k + 0.5) * REGION_METRES],
      })
    }
    regionOf[slot] = number
  }
  return { regionOf, regions }
}

function sphereAround(positions: Float32Array): { middle: Vector, radiusMetres: number } {
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < positions.length; i++) {
    const axis = i % 3
    low[axis] = Math.min(low[axis]!, positions[i]!)
    high[axis] = Math.max(high[axis]!, positions[i]!)
  }
  if (positions.length === 0) return { middle: [0, 0, 0], radiusMetres: 0 }
  const half = [0, 1, 2].map((k) => (high[k]! - low[k]!) / 2)
  return {
    middle: [low[0]! + half[0]!, low[1]! + half[1]!, low[2]! + half[2]!],
    radiusMetres: Math.sqrt(half[0]! * half[0]! + half[1]! * half[1]! + half[2]! * half[2]!),
  }
}

/** Strand directions of the asset's vertices, worked out as they are asked for; NaN until then. */
const strandsByAsset = new WeakMap<object, Float32Array>()

function strandsOf({ asset }: PosedSubject): Float32Array {
  let strands = strandsByAsset.get(asset)
  if (!strands) strandsByAsset.set(asset, (strands = new Float32Array(asset.positions.length).fill(NaN)))
  return strands
}

function strandAtVertex({ asset }: PosedSubject, strands: Float32Array, v: number): Float32Array {
  const at = 3 * v
  if (Number.isNaN(strands[at]!)) {
    const { positions: p, normals: n } = asset
    strands.set(strandDirectionAt(p[at]!, p[at + 1]!, p[at + 2]!, [n[at]!, n[at + 1]!, n[at + 2]!]), at)
  }
  return strands.subarray(at, at + 3)
}
