import type { SubjectMesh } from '../mesh/subjectMesh.ts'
import { TRACED_BELOW, isBlocked } from './selfShadow.ts'
import { DIRECTION_COUNT, cellDirections, squareOf } from './octahedron.ts'
import {
  FORMAT_VERSION, HEADER_BYTES, MAGIC, NORMAL_LEVELS, POSITION_LEVELS, type Forecast, forecastOf, normalOf,
} from './format.ts'

/** A mesh with positions and normals on the steps that the file can hold: the self-shadow is traced on this. */
export interface SteppedMesh extends SubjectMesh {
  readonly low: readonly [number, number, number]
  readonly size: readonly [number, number, number]
  /** Three steps a vertex, 0 to POSITION_LEVELS. */
  readonly steps: Uint16Array
  /** Two places a vertex on the square of normals, 0 to NORMAL_LEVELS - 1. */
  readonly normalSteps: Uint16Array
}

/** Puts a mesh in walking order (see order.ts) on the file's steps. */
export function stepped(mesh: SubjectMesh): SteppedMesh {
  const count = mesh.positions.length / 3
  const low: [number, number, number] = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  mesh.positions.forEach((value, i) => {
    low[i % 3] = Math.min(low[i % 3]!, value)
    high[i % 3] = Math.max(high[i % 3]!, value)
  })
  const size: [number, number, number] = [0, 0, 0]
  for (let axis = 0; axis < 3; axis++) {
    low[axis] = Math.fround(low[axis]!)
    size[axis] = Math.fround(high[axis]! - low[axis]!)
  }
  const steps = new Uint16Array(count * 3)
  const positions = new Float32Array(count * 3)
  for (let i = 0; i < steps.length; i++) {
    steps[i] = Math.round(((mesh.positions[i]! - low[i % 3]!) / size[i % 3]!) * POSITION_LEVELS)
    positions[i] = low[i % 3]! + (steps[i]! / POSITION_LEVELS) * size[i % 3]!
  }
  const normalSteps = new Uint16Array(count * 2)
  const normals = new Float32Array(count * 3)
  const place = new Float64Array(2)
  for (let v = 0; v < count; v++) {
    squareOf(mesh.normals[v * 3]!, mesh.normals[v * 3 + 1]!, mesh.normals[v * 3 + 2]!, place)
    for (let i = 0; i < 2; i++) {
      normalSteps[v * 2 + i] = Math.min(NORMAL_LEVELS - 1, Math.max(0, Math.floor(((place[i]! + 1) / 2) * NORMAL_LEVELS)))
    }
    normalOf(normalSteps[v * 2]!, normalSteps[v * 2 + 1]!, normals, v * 3)
  }
  return { ...mesh, positions, normals, low, size, steps, normalSteps }
}

/** Differences as two rows of bytes, low and high: small ones leave the high row empty, which packs well. */
function twoRows(out: Uint8Array, at: number, values: Int32Array): number {
  for (let i = 0; i < values.length; i++) {
    const folded = ((values[i]! << 1) ^ (values[i]! >> 31)) & 0x1ffff
    out[at + i] = folded & 255
    out[at + values.length + i] = (folded >> 8) & 255
  }
  return at + 2 * values.length
}

/** Signed difference on a ring of 65536 steps, so that 16 bits always hold it. */
const wrap16 = (value: number): number => ((value + 32768) & 65535) - 32768

/** The asset as bytes, meant to be sent gzipped or brotli-compressed. */
export function encodeSubject(mesh: SteppedMesh, selfShadow: Uint32Array): Uint8Array<ArrayBuffer> {
  const count = mesh.steps.length / 3
  const facetCount = mesh.triangles.length / 3
  const forecast = forecastOf(mesh.triangles, count)
  const shadow = shadowChanges(mesh, selfShadow, forecast)
  const bytes = new Uint8Array(HEADER_BYTES + mesh.triangles.length * 2 + count * 11 + shadow.length)
  const header = new DataView(bytes.buffer)
  header.setUint32(0, MAGIC, true)
  header.setUint32(4, FORMAT_VERSION, true)
  header.setUint32(8, count, true)
  header.setUint32(12, facetCount, true)
  mesh.low.forEach((value, axis) => header.setFloat32(16 + axis * 4, value, true))
  mesh.size.forEach((value, axis) => header.setFloat32(28 + axis * 4, value, true))
  header.setUint32(40, shadow.length, true)
  let at = twoRows(bytes, HEADER_BYTES, indexSteps(mesh.triangles))
  at = twoRows(bytes, at, positionSteps(mesh.steps, forecast))
  at = twoRows(bytes, at, normalDifferences(mesh.normalSteps, forecast))
  bytes.set(mesh.materials, at)
  bytes.set(shadow, at + count)
  return bytes
}

/** How far each corner lies below the next unused number: 0 for a new vertex. Widths above 65535 cannot occur. */
function indexSteps(triangles: Uint32Array): Int32Array {
  const out = new Int32Array(triangles.length)
  let next = 0
  for (let i = 0; i < triangles.length; i++) {
    out[i] = wrap16(next - triangles[i]!)
    if (triangles[i] === next) next++
  }
  return out
}

function positionSteps(steps: Uint16Array, { near, beside, opposite }: Forecast): Int32Array {
  const count = near.length
  const out = new Int32Array(steps.length)
  for (let v = 0; v < count; v++) for (let axis = 0; axis < 3; axis++) {
    const a = near[v]! < 0 ? 0 : steps[near[v]! * 3 + axis]!
    const slope = opposite[v]! < 0 ? 0 : steps[beside[v]! * 3 + axis]! - steps[opposite[v]! * 3 + axis]!
    out[axis * count + v] = wrap16(steps[v * 3 + axis]! - a - slope)
  }
  return out
}

function normalDifferences(normalSteps: Uint16Array, { near }: Forecast): Int32Array {
  const count = near.length
  const out = new Int32Array(normalSteps.length)
  for (let v = 0; v < count; v++) for (let i = 0; i < 2; i++) {
    out[i * count + v] = normalSteps[v * 2 + i]! - (near[v]! < 0 ? 0 : normalSteps[near[v]! * 2 + i]!)
  }
  return out
}

/**
 * The self-shadow as changes from the vertex each is predicted from: for each vertex the gaps between changed cells,
 * plus one, seven bits a byte, and 0 at the end. Cells below the vertex's horizon are taken as unchanged.
 */
function shadowChanges(mesh: SteppedMesh, bits: Uint32Array, { near }: Forecast): Uint8Array {
  const directions = cellDirections()
  const said = new Uint8Array(near.length * DIRECTION_COUNT)
  const out: number[] = []
  for (let v = 0; v < near.length; v++) {
    const parent = near[v]!
    const [nx, ny, nz] = [mesh.normals[v * 3]!, mesh.normals[v * 3 + 1]!, mesh.normals[v * 3 + 2]!]
    let gap = 1
    for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
      const foretold = parent < 0 ? 0 : said[parent * DIRECTION_COUNT + cell]!
      const rise = nx * directions[cell * 3]! + ny * directions[cell * 3 + 1]! + nz * directions[cell * 3 + 2]!
      const blocked = rise < -TRACED_BELOW ? foretold : Number(isBlocked(bits, v, cell))
      said[v * DIRECTION_COUNT + cell] = blocked
      if (blocked === foretold) gap++
      else {
        for (; gap > 127; gap >>= 7) out.push(128 | (gap & 127))
        out.push(gap)
        gap = 1
      }
    }
    out.push(0)
  }
  return Uint8Array.from(out)
}
