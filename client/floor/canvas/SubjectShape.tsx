import { memo } from 'react'
import type { Subject } from '../../../shared-core/plan/schema/look.ts'
import { silhouette, type SolidPart } from '../solids/solid.ts'
import type { Thing } from '../things.ts'
import type { ViewKind } from '../view/projection.ts'
import { Group } from './konva.ts'
import { Outline } from './Outline.tsx'
import type { Palette } from './palette.ts'

/** From what lies lowest to what lies on top. */
const COVERS = ['cloth', 'flesh', 'hair'] as const satisfies readonly SolidPart[]

interface SubjectShapeProps {
  readonly thing: Thing
  readonly subject: Subject
  readonly view: ViewKind
  readonly palette: Palette
  readonly marked: boolean
}

/**
 * The subject as the light meets it: shoulders, head, hair, and the nose to tell the turn. The rounded parts are drawn as
 * one figure: all their outlines first, then all their fills.
 */
export const SubjectShape = memo(function SubjectShape({ thing, subject, view, palette, marked }: SubjectShapeProps) {
  const fills: Partial<Record<SolidPart, string>> = { cloth: subject.cloth, flesh: palette.inkSoft, hair: subject.hair }
  const parts = thing.solids.map((solid) => ({ part: solid.part, path: silhouette(solid, view) }))
  return (
    <Group listening={false}>
      {COVERS.map((cover) => {
        const covered = parts.filter(({ part }) => part === cover)
        return (
          <Group key={cover} listening={false}>
            {covered.map(({ path }, i) => <Outline key={`edge${i}`} path={path} stroke={marked ? palette.focus : palette.line} strokeWidth={marked ? 3.5 : 2.5} />)}
            {covered.map(({ path }, i) => <Outline key={i} path={path} fill={fills[cover] ?? palette.inkSoft} />)}
          </Group>
        )
      })}
    </Group>
  )
})
