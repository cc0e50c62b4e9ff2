import { cosine, sine } from '../arithmetic/portable.ts'
import type { Front } from './modifier.ts'

/** Corners of a round front, which has the area of the true disc: what it gives is within 1e-4 of the disc's. */
const DISC_CORNERS = 24

/** Corner of a front across its own width (u) and height (v), in metres from its centre. */
export type OutlinePoint = readonly [u: number, v: number]

function regularPolygon(corners: number, circumradius: number, turnRadians: number): OutlinePoint[] {
  return Array.from({ length: corners }, (_, i) => {
    const angle = turnRadians + (2 * Math.PI * i) / corners
    return [circumradius * cosine(angle), circumradius * sine(angle)] as const
  })
}

/** Outline of a front as a convex polygon about its centre, anticlockwise. */
export function outlineOf(front: Pick<Front, 'shape' | 'widthMetres' | 'heightMetres'>): OutlinePoint[] {
  const halfWidth = front.widthMetres / 2
  const halfHeight = front.heightMetres / 2
  if (front.shape === 'rectangle') {
    return [[-halfWidth, -halfHeight], [halfWidth, -halfHeight], [halfWidth, halfHeight], [-halfWidth, halfHeight]]
  }
  if (front.shape === 'octagon') return regularPolygon(8, halfWidth / cosine(Math.PI / 8), Math.PI / 8)
  const equalArea = halfWidth * Math.sqrt((2 * Math.PI) / (DISC_CORNERS * sine((2 * Math.PI) / DISC_CORNERS)))
  return regularPolygon(DISC_CORNERS, equalArea, Math.PI / DISC_CORNERS)
}

/** Area of a convex outline in square metres. */
export function outlineArea(outline: readonly OutlinePoint[]): number {
  let twice = 0
  for (let i = 0; i < outline.length; i++) {
    const [u, v] = outline[i]!
    const [nextU, nextV] = outline[(i + 1) % outline.length]!
    twice += u * nextV - nextU * v
  }
  return Math.abs(twice) / 2
}
