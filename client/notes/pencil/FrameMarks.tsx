import { phone, useMedia } from '../../shell/useMedia.ts'
import './FrameMarks.css'
import { NoteMark } from './NoteMark.tsx'
import { spreadMarks } from './spreadMarks.ts'
import type { FrameMark } from './useFrameMarks.ts'

interface FrameMarksProps {
  readonly marks: readonly FrameMark[]
  readonly widthPixels: number
  readonly heightPixels: number
}

const FACE_PIXELS = 19
const FACE_PIXELS_FOR_THUMBS = 23

/** The notes on the Frame: a dot at the very place, and beside it the number, so that what lies there can still be seen and pressed. */
export function FrameMarks({ marks, widthPixels, heightPixels }: FrameMarksProps) {
  const onPhone = useMedia(phone)
  if (marks.length === 0) return null
  const places = marks.map(({ place: { frameX, frameY } }) => ({ x: frameX * widthPixels, y: frameY * heightPixels }))
  const offsets = spreadMarks(places, widthPixels, heightPixels, onPhone ? FACE_PIXELS_FOR_THUMBS : FACE_PIXELS)
  return (
    <ul className="frame-marks" aria-label="Notes on the Frame">
      {marks.map(({ thread, place, isNew }, i) => {
        const [dx, dy] = offsets[i]!
        return (
          <li key={thread.id} className="frame-marks-note" style={{ left: `${place.frameX * 100}%`, top: `${place.frameY * 100}%` }}>
            <span className="frame-marks-dot" data-note-place={thread.id} aria-hidden />
            <NoteMark thread={thread} isNew={isNew} className="frame-marks-number" style={{ left: dx, top: dy }} />
          </li>
        )
      })}
    </ul>
  )
}
