import { memo } from 'react'
import { Line } from './konva.ts'
import type { Palette } from './palette.ts'

/** Of paper tape, as it is stuck; common practice, no source. */
const ACROSS_METRES = 0.3
const STEM_METRES = 0.25
const TAPE_METRES = 0.03

/** The T on which the subject stands, seen through them: the zero of the set. */
export const SubjectT = memo(function SubjectT({ palette }: { readonly palette: Palette }) {
  const tape = { stroke: palette.tape, strokeWidth: TAPE_METRES, opacity: 0.75, listening: false }
  return (
    <>
      <Line points={[-ACROSS_METRES / 2, 0, ACROSS_METRES / 2, 0]} {...tape} />
      <Line points={[0, TAPE_METRES / 2, 0, STEM_METRES]} {...tape} />
    </>
  )
})
