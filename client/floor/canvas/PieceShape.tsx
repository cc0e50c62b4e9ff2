import { memo } from 'react'
import type { Piece } from '../../../shared-core/plan/schema/look.ts'
import { silhouette } from '../solids/solid.ts'
import type { Thing } from '../things.ts'
import { facesViewer, project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { Group } from './konva.ts'
import { Outline, Path } from './Outline.tsx'
import { bodyAlpha, withAlpha, type Palette } from './palette.ts'

interface PieceShapeProps {
  readonly thing: Thing
  readonly piece: Piece
  readonly view: ViewKind
  readonly palette: Palette
  readonly pixelsPerMetre: number
  readonly marked: boolean
}

/** A flag, V-flat, board or scrim: each panel with the colour of its front towards where it faces and of its back behind. */
export const PieceShape = memo(function PieceShape({ thing, piece, view, palette, pixelsPerMetre, marked }: PieceShapeProps) {
  const rim = marked ? palette.focus : palette.inkFaint
  return (
    <Group listening={false}>
      {thing.solids.map((solid, i) => {
        const path = silhouette(solid, view)
        if (!isEdgeOn(path, pixelsPerMetre)) {
          const seen = facesViewer(view, thing.axis) ? piece.front : piece.back
          return <Outline key={i} path={path} fill={withAlpha(seen, piece.kind === 'scrim' ? 0.25 : bodyAlpha(view) * 0.7)} stroke={rim} strokeWidth={1.25} />
        }
        const line = longestSpan(path)
        const aside = sideOf(line, thing, view, 1.5 / pixelsPerMetre)
        return (
          <Group key={i} listening={false}>
            <Path path={line} stroke={rim} strokeWidth={7} lineCap="round" />
            <Path path={line} stroke={piece.back} strokeWidth={5} />
            <Path path={shifted(line, aside)} stroke={piece.front} strokeWidth={2.5} {...(piece.kind === 'scrim' && { dash: [6, 3] })} />
          </Group>
        )
      })}
    </Group>
  )
})

/** Thinner than this in the drawing, a panel is drawn as a line with two faces. */
const EDGE_PIXELS = 5

function isEdgeOn(path: readonly DrawnPoint[], pixelsPerMetre: number): boolean {
  if (path.length < 3) return true
  const line = longestSpan(path)
  const [a, b] = line
  const length = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2)
  const widest = Math.max(...path.map((p) => Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / (length || 1)))
  return widest * pixelsPerMetre < EDGE_PIXELS
}

function longestSpan(path: readonly DrawnPoint[]): [DrawnPoint, DrawnPoint] {
  let best: [DrawnPoint, DrawnPoint] = [path[0] ?? [0, 0], path[path.length - 1] ?? [0, 0]]
  let longest = -1
  for (const a of path) {
    for (const b of path) {
      const length = (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2
      if (length > longest) {
        longest = length
        best = [a, b]
      }
    }
  }
  return best
}

/** Across a line, by so many metres, towards the side that the thing faces. */
function sideOf([a, b]: readonly [DrawnPoint, DrawnPoint], thing: Thing, view: ViewKind, metres: number): DrawnPoint {
  const across: DrawnPoint = [-(b[1] - a[1]), b[0] - a[0]]
  const size = Math.sqrt(across[0] ** 2 + across[1] ** 2) || 1
  const facing = project(view, thing.axis)
  const sign = across[0] * facing[0] + across[1] * facing[1] >= 0 ? 1 : -1
  return [(sign * across[0] * metres) / size, (sign * across[1] * metres) / size]
}

function shifted(line: readonly DrawnPoint[], by: DrawnPoint): DrawnPoint[] {
  return line.map(([u, v]) => [u + by[0], v + by[1]])
}
