import { readFileSync } from 'node:fs'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { encodeSubject, stepped } from '../../shared-core/subject/asset/encode.ts'
import { cellDirections, cellOf, DIRECTION_COUNT } from '../../shared-core/subject/asset/octahedron.ts'
import { inWalkingOrder } from '../../shared-core/subject/asset/order.ts'
import { isBlocked, selfShadow, WORDS } from '../../shared-core/subject/asset/selfShadow.ts'
import { eyeballOf, surfaceDistanceAt } from '../../shared-core/subject/field/subjectField.ts'
import { meshMaterials, type SubjectMesh } from '../../shared-core/subject/mesh/subjectMesh.ts'

const bytes = new Uint8Array(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const subject = decodeSubject(bytes)
const count = subject.positions.length / 3
const eye = meshMaterials.indexOf('eye')
const point = (mesh: SubjectMesh, v: number): [number, number, number] =>
  [mesh.positions[v * 3]!, mesh.positions[v * 3 + 1]!, mesh.positions[v * 3 + 2]!]

describe('the mesh in the asset', () => {
  it('is closed: every edge joins two facets, once each way round', () => {
    const seen = new Set<number>()
    for (let i = 0; i < subject.triangles.length; i++) {
      const a = subject.triangles[i]!
      const b = subject.triangles[i - (i % 3) + (((i % 3) + 1) % 3)]!
      expect(seen.has(a * count + b)).toBe(false)
      seen.add(a * count + b)
    }
    let open = 0
    for (const side of seen) if (!seen.has((side % count) * count + Math.floor(side / count))) open++
    expect(open).toBe(0)
  })
  it('is three closed bodies, each a sphere in topology (Euler: vertices - edges + facets = 2 each)', () => {
    expect(count - subject.triangles.length / 2 + subject.triangles.length / 3).toBe(6)
  })
  it('has its normals outward', () => {
    let volume = 0
    let against = 0
    for (let f = 0; f < subject.triangles.length; f += 3) {
      const [i, j, k] = [subject.triangles[f]!, subject.triangles[f + 1]!, subject.triangles[f + 2]!]
      const [a, b, c] = [point(subject, i), point(subject, j), point(subject, k)]
      const [u, v] = [[b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const, [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const]
      const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]] as const
      volume += (a[0] * n[0] + a[1] * n[1] + a[2] * n[2]) / 6
      const sum = [0, 1, 2].map((axis) => subject.normals[i * 3 + axis]! + subject.normals[j * 3 + axis]! + subject.normals[k * 3 + axis]!)
      if (sum[0]! * n[0] + sum[1]! * n[1] + sum[2]! * n[2] <= 0) against++
    }
    expect(volume).toBeGreaterThan(0.02)
    // A few slivers lie along the sharp line between the lips and at the corners of the lids.
    expect(against).toBeLessThan(subject.triangles.length / 3 / 1000)
  })
  it('lies on the field as the code has it now', () => {
    let worst = 0
    let sum = 0
    let skin = 0
    for (let v = 0; v < count; v++) {
      if (subject.materials[v] === eye) continue
      const off = Math.abs(surfaceDistanceAt(...point(subject, v)))
      worst = Math.max(worst, off)
      sum += off
      skin++
    }
    expect(sum / skin).toBeLessThan(0.00005)
    expect(worst).toBeLessThan(0.003)
  })
  it('has eyeballs on their two spheres', () => {
    for (let v = 0; v < count; v++) {
      if (subject.materials[v] !== eye) continue
      const p = point(subject, v)
      const ball = eyeballOf(p[0] < 0 ? -1 : 1)
      const from = (c: readonly [number, number, number], r: number): number =>
        Math.abs(Math.sqrt((p[0] - c[0]) * (p[0] - c[0]) + (p[1] - c[1]) * (p[1] - c[1]) + (p[2] - c[2]) * (p[2] - c[2])) - r)
      expect(Math.min(from(ball.centre, ball.radius), from(ball.corneaCentre, ball.corneaRadius))).toBeLessThan(0.0003)
    }
  })
  it('has a face that mirrors itself within 0.15 mm', () => {
    let worst = 0
    for (let v = 0; v < count; v++) {
      const [x, y, z] = point(subject, v)
      if (subject.materials[v] !== 0 || y > -0.06 || z < 1.51 || z > 1.66) continue
      worst = Math.max(worst, Math.abs(surfaceDistanceAt(-x, y, z) - surfaceDistanceAt(x, y, z)))
    }
    expect(worst).toBeLessThan(0.00015)
  })
})

describe('the asset file', () => {
  it('is under 1.5 MB over the wire', () => {
    expect(gzipSync(bytes).length).toBeLessThan(1_500_000)
    expect(brotliCompressSync(bytes).length).toBeLessThan(1_500_000)
  })
  it('gives back what was written', () => {
    const mesh = stepped(inWalkingOrder(twoBalls()))
    const shadow = selfShadow(mesh.positions, mesh.normals, mesh.triangles)
    const back = decodeSubject(encodeSubject(mesh, shadow))
    expect(back.positions).toEqual(mesh.positions)
    expect(back.normals).toEqual(mesh.normals)
    expect(back.triangles).toEqual(mesh.triangles)
    expect(back.materials).toEqual(mesh.materials)
    const directions = cellDirections()
    for (let v = 0; v < back.positions.length / 3; v++) for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
      const rise = [0, 1, 2].reduce((sum, axis) => sum + mesh.normals[v * 3 + axis]! * directions[cell * 3 + axis]!, 0)
      if (rise > 0) expect(isBlocked(back.selfShadow, v, cell)).toBe(isBlocked(shadow, v, cell))
      if (rise < -0.25) expect(isBlocked(back.selfShadow, v, cell)).toBe(true)
    }
  })
  it('refuses other files', () => {
    expect(() => decodeSubject(new Uint8Array(100))).toThrow(RangeError)
    expect(() => decodeSubject(bytes.slice(0, bytes.length - 1))).toThrow(RangeError)
  })
})

describe('the self-shadow', () => {
  it('agrees with rays tried against every facet', () => {
    const directions = cellDirections()
    let asked = 0
    let wrong = 0
    let blockedOnes = 0
    for (let v = 11; v < count; v += 613) {
      const n = [subject.normals[v * 3]!, subject.normals[v * 3 + 1]!, subject.normals[v * 3 + 2]!] as const
      const p = point(subject, v)
      const origin = [p[0] + n[0] * 0.0003, p[1] + n[1] * 0.0003, p[2] + n[2] * 0.0003] as const
      for (let cell = (v * 7) % 97; cell < DIRECTION_COUNT; cell += 97) {
        const d = [directions[cell * 3]!, directions[cell * 3 + 1]!, directions[cell * 3 + 2]!] as const
        if (n[0] * d[0] + n[1] * d[1] + n[2] * d[2] <= 0) continue
        asked++
        const blocked = meetsAny(origin, d)
        if (blocked) blockedOnes++
        if (blocked !== isBlocked(subject.selfShadow, v, cell)) wrong++
      }
    }
    expect(asked).toBeGreaterThan(250)
    expect(blockedOnes).toBeGreaterThan(20)
    // Rays that graze an edge between two facets may fall either way.
    expect(wrong).toBeLessThanOrEqual(asked * 0.005)
  })
  it('finds each direction in the cell that holds it', () => {
    const directions = cellDirections()
    for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
      expect(cellOf(directions[cell * 3]!, directions[cell * 3 + 1]!, directions[cell * 3 + 2]!)).toBe(cell)
    }
    expect(subject.selfShadow.length).toBe(count * WORDS)
  })
})

/** The plain way: on which side of the ray each edge of a facet passes, by signed volumes. */
function meetsAny(o: readonly [number, number, number], d: readonly [number, number, number]): boolean {
  const { positions: p, triangles: t } = subject
  for (let f = 0; f < t.length; f += 3) {
    const at = (c: number, axis: 0 | 1 | 2): number => p[t[f + c]! * 3 + axis]! - o[axis]
    const side = (c: number, e: number): number => {
      const [ax, ay, az, bx, by, bz] = [at(c, 0), at(c, 1), at(c, 2), at(e, 0), at(e, 1), at(e, 2)]
      return d[0] * (ay * bz - az * by) + d[1] * (az * bx - ax * bz) + d[2] * (ax * by - ay * bx)
    }
    const w0 = side(1, 2)
    const w1 = side(2, 0)
    if (w0 > 0 !== w1 > 0) continue
    const w2 = side(0, 1)
    if (w0 > 0 !== w2 > 0) continue
    const sum = w0 + w1 + w2
    if (sum === 0) continue
    const along = [0, 1, 2].reduce((total, axis) => total
      + d[axis]! * (w0 * at(0, axis as 0) + w1 * at(1, axis as 0) + w2 * at(2, axis as 0)) / sum, 0)
    if (along > 0) return true
  }
  return false
}

/** A coarse ball with a smaller one beside it that shades it. */
function twoBalls(): SubjectMesh {
  const corners: [number, number, number][] = [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]]
  const faces = [[0, 2, 4], [2, 1, 4], [1, 3, 4], [3, 0, 4], [2, 0, 5], [1, 2, 5], [3, 1, 5], [0, 3, 5]] as const
  const positions: number[] = []
  const normals: number[] = []
  const triangles: number[] = []
  for (const [x, radius] of [[0, 0.1], [0.25, 0.05]] as const) {
    const first = positions.length / 3
    for (const c of corners) {
      positions.push(x + c[0] * radius, c[1] * radius, c[2] * radius)
      normals.push(...c)
    }
    for (const face of faces) triangles.push(...face.map((corner) => first + corner))
  }
  return {
    positions: Float32Array.from(positions), normals: Float32Array.from(normals), triangles: Uint32Array.from(triangles),
    materials: new Uint8Array(positions.length / 3).fill(2),
  }
}
