import { memo } from 'react'
import { silhouette, type Solid } from '../solids/solid.ts'
import type { Thing } from '../things.ts'
import type { ViewKind } from '../view/projection.ts'
import { Group } from './konva.ts'
import { Outline, Path } from './Outline.tsx'
import type { Palette } from './palette.ts'

interface LightShapeProps {
  readonly thing: Thing
  readonly view: ViewKind
  readonly palette: Palette
  /** The gel on white paper, as a colour for the front. */
  readonly gelColour: string
  readonly on: boolean
  readonly marked: boolean
}

/** One light: stand, head, body and front in true size; the front wears its gel's colour. */
export const LightShape = memo(function LightShape({ thing, view, palette, gelColour, on, marked }: LightShapeProps) {
  return (
    <Group listening={false} opacity={on ? 1 : 0.6}>
      {thing.supports.map((solid, i) => <SupportShape key={i} solid={solid} view={view} palette={palette} />)}
      {thing.solids.map((solid) => {
        const path = silhouette(solid, view)
        if (solid.part === 'front') {
          return <Outline key="front" path={path} fill={on ? gelColour : palette.body} stroke={on ? gelColour : palette.inkFaint} strokeWidth={3} {...(!on && { dash: [4, 4] })} />
        }
        const edge = marked ? palette.focus : solid.part === 'head' ? palette.line : palette.inkFaint
        return <Outline key={solid.part} path={path} fill={palette.body} stroke={edge} strokeWidth={marked ? 1.75 : 1} />
      })}
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
