import { memo } from 'react'
import type { Subject } from '../../../shared-core/plan/schema/look.ts'
import { silhouette } from '../solids/solid.ts'
import type { Thing } from '../things.ts'
import type { ViewKind } from '../view/projection.ts'
import { Group } from './konva.ts'
import { Outline } from './Outline.tsx'
import type { Palette } from './palette.ts'

interface SubjectShapeProps {
  readonly thing: Thing
  readonly subject: Subject
  readonly view: ViewKind
  readonly palette: Palette
  readonly marked: boolean
}

/** The subject as the light meets it: shoulders, head, hair, and the nose to tell the turn. */
export const SubjectShape = memo(function SubjectShape({ thing, subject, view, palette, marked }: SubjectShapeProps) {
  const edge = marked ? palette.focus : palette.line
  return (
    <Group listening={false}>
      {thing.solids.map((solid, i) => (
        <Outline
          key={i}
          path={silhouette(solid, view)}
          fill={solid.part === 'cloth' ? subject.cloth : solid.part === 'hair' ? subject.hair : palette.inkSoft}
          stroke={edge}
          strokeWidth={marked ? 1.25 : 0.75}
        />
      ))}
    </Group>
  )
})
