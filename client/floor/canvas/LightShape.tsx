import { memo } from 'react'
import { leadingEdge } from '../solids/hull.ts'
import { silhouette, type Solid } from '../solids/solid.ts'
import type { Thing } from '../things.ts'
import { facesViewer, project, type ViewKind } from '../view/projection.ts'
import { Group } from './konva.ts'
import { Outline, Path } from './Outline.tsx'
import { bodyAlpha, withAlpha, type Palette } from './palette.ts'

interface LightShapeProps {
  readonly thing: Thing
  readonly view: ViewKind
  readonly palette: Palette
  /** The gel on white paper, as a colour for the front. */
  readonly gelColour: string
  readonly on: boolean
  readonly marked: boolean
}

/**
 * One light: stand, head, body and front in true size. The front wears its gel's colour: the whole of it where it turns
 * to the viewer, else its leading edge, as the body hides the rest.
 */
export const LightShape = memo(function LightShape({ thing, view, palette, gelColour, on, marked }: LightShapeProps) {
  const seen = facesViewer(view, thing.axis)
  const colour = on ? gelColour : palette.inkFaint
  const front = thing.solids.find((solid) => solid.part === 'front')
  const outline = front === undefined ? [] : silhouette(front, view)
  const bodies = thing.solids.filter((solid) => solid.part !== 'front').map((solid) => (
    <Outline
      key={solid.part}
      path={silhouette(solid, view)}
      fill={withAlpha(palette.body, bodyAlpha(view))}
      stroke={marked ? palette.focus : solid.part === 'head' ? palette.line : palette.inkFaint}
      strokeWidth={marked ? 1.75 : 1}
    />
  ))
  const edge = leadingEdge(outline, project(view, thing.axis))
  return (
    <Group listening={false} opacity={on ? 1 : 0.6}>
      {thing.supports.map((solid, i) => <SupportShape key={i} solid={solid} view={view} palette={palette} />)}
      {!seen && <Outline path={outline} fill={colour} opacity={0.35} />}
      {bodies}
      {seen && <Outline path={outline} fill={colour} opacity={on ? bodyAlpha(view) * 0.9 : 0.3} />}
      {/* A darker rim, so that a white or pale front shows on any floor. */}
      <Path path={edge} stroke={palette.line} strokeWidth={6} lineCap="round" />
      <Path path={edge} stroke={colour} strokeWidth={4} lineCap="round" {...(!on && { dash: [4, 5] })} />
    </Group>
  )
})

interface SupportShapeProps {
  readonly solid: Solid
  readonly view: ViewKind
  readonly palette: Palette
}

function SupportShape({ solid, view, palette }: SupportShapeProps) {
  const path = silhouette(solid, view)
  if (solid.part === 'column') return <Outline path={path} fill={palette.line} stroke={palette.line} strokeWidth={1} />
  return <Path path={path} stroke={palette.line} strokeWidth={solid.part === 'arm' ? 3 : 1.5} lineCap="round" />
}
