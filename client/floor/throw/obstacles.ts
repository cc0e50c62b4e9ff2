import { cross, distance, dot, subtract, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Look } from '../../../shared-core/plan/schema/look.ts'
import { panelCorners, panelsOf } from '../../../shared-core/set/panels.ts'
import { paperPanel } from '../../../shared-core/set/room.ts'
import { subjectForm, type Ellipsoid } from '../../../shared-core/set/subjectForm.ts'

/** What stands in a throw's way, made ready for many lines of sight. */
export interface Obstacles {
  readonly panels: readonly Panel[]
  readonly bodies: readonly Ellipsoid[]
  /** Holds all bodies: most lines of sight miss it and need no further look. */
  readonly around: Ball
}

interface Ball {
  readonly centre: Vector
  readonly radius: number
}

/** A flat four-cornered panel: one corner and its two edges. */
interface Panel {
  readonly corner: Vector
  readonly across: Vector
  readonly along: Vector
  readonly normal: Vector
  readonly acrossLength2: number
  readonly alongLength2: number
  /** Share of the light that goes on through it. */
  readonly transmittance: number
}

export function obstaclesOf(look: Pick<Look, 'pieces' | 'subject' | 'backdrop'>): Obstacles {
  const paper = paperPanel(look.backdrop)
  const panels = Object.entries(look.pieces).flatMap(([id, piece]) =>
    panelsOf({ id, ...piece }).map((panel) => panelOf(panelCorners(panel), piece.kind === 'scrim' ? piece.transmittance : 0)),
  )
  if (paper !== null) panels.push(panelOf(panelCorners(paper), 0))
  const bodies = subjectForm(look.subject).parts.filter((part) => part.part !== 'hair')
  return { panels, bodies, around: ballAround(bodies) }
}

function panelOf(corners: readonly Vector[], transmittance: number): Panel {
  const [corner = [0, 0, 0], next = corner, , last = corner] = corners
  const across = subtract(next, corner)
  const along = subtract(last, corner)
  return { corner, across, along, normal: cross(across, along), acrossLength2: dot(across, across), alongLength2: dot(along, along), transmittance }
}

/** Share of the light that gets from one point to another past all obstacles, 0 to 1. */
export function passes(obstacles: Obstacles, from: Vector, to: Vector): number {
  const way = subtract(to, from)
  if (meetsBall(obstacles.around, from, way)) {
    for (const body of obstacles.bodies) if (crossesBody(body, from, way)) return 0
  }
  let share = 1
  for (const panel of obstacles.panels) {
    if (crossesPanel(panel, from, way)) share *= panel.transmittance
    if (share === 0) return 0
  }
  return share
}

function crossesPanel(panel: Panel, from: Vector, way: Vector): boolean {
  const towards = dot(panel.normal, way)
  if (Math.abs(towards) < 1e-12) return false
  const t = dot(panel.normal, subtract(panel.corner, from)) / towards
  if (t <= 1e-6 || t >= 1 - 1e-6) return false
  const inPanel: Vector = [
    from[0] + way[0] * t - panel.corner[0],
    from[1] + way[1] * t - panel.corner[1],
    from[2] + way[2] * t - panel.corner[2],
  ]
  const across = dot(inPanel, panel.across)
  const along = dot(inPanel, panel.along)
  return across >= 0 && across <= panel.acrossLength2 && along >= 0 && along <= panel.alongLength2
}

function crossesBody({ centre, axes, semiAxesMetres }: Ellipsoid, from: Vector, way: Vector): boolean {
  const start = subtract(from, centre)
  let a = 0
  let b = 0
  let c = -1
  for (let i = 0; i < 3; i++) {
    const axis = axes[i]!
    const radius = semiAxesMetres[i]!
    const s = dot(start, axis) / radius
    const w = dot(way, axis) / radius
    a += w * w
    b += s * w
    c += s * s
  }
  const root = b * b - a * c
  if (root <= 0) return false
  const near = (-b - Math.sqrt(root)) / a
  const far = (-b + Math.sqrt(root)) / a
  return near < 1 && far > 0
}

function ballAround(bodies: readonly Ellipsoid[]): Ball {
  const heights = bodies.map((body) => body.centre[2])
  const middle = (Math.min(...heights) + Math.max(...heights)) / 2
  const centre: Vector = [bodies[0]?.centre[0] ?? 0, bodies[0]?.centre[1] ?? 0, middle]
  return { centre, radius: Math.max(0, ...bodies.map((body) => distance(body.centre, centre) + Math.max(...body.semiAxesMetres))) }
}

function meetsBall({ centre, radius }: Ball, from: Vector, way: Vector): boolean {
  const toCentre = subtract(centre, from)
  const along = Math.min(1, Math.max(0, dot(toCentre, way) / dot(way, way)))
  const x = toCentre[0] - way[0] * along
  const y = toCentre[1] - way[1] * along
  const z = toCentre[2] - way[2] * along
  return x * x + y * y + z * z < radius * radius
}
