import type { Thing } from '../things.ts'
import { silhouette } from '../solids/solid.ts'
import type { ViewKind } from '../view/projection.ts'
import { Group } from './konva.ts'
import { Outline } from './Outline.tsx'
import type { Palette } from './palette.ts'

interface OthersShapeProps {
  readonly thing: Thing
  readonly view: ViewKind
  readonly palette: Palette
}

/** A quiet outline around what somebody else has in hand; their name stands beside it. */
export function OthersShape({ thing, view, palette }: OthersShapeProps) {
  return (
    <Group listening={false}>
      {thing.solids.map((solid, i) => (
        <Outline key={i} path={silhouette(solid, view)} stroke={palette.tape} strokeWidth={2} dash={[5, 4]} />
      ))}
    </Group>
  )
}
