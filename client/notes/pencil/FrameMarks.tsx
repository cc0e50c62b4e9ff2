import './FrameMarks.css'
import { NoteMark } from './NoteMark.tsx'
import type { FrameMark } from './useFrameMarks.ts'

/** The notes on the Frame: a dot at the very place, and beside it the number, so that what lies there can still be seen and pressed. */
export function FrameMarks({ marks }: { readonly marks: readonly FrameMark[] }) {
  if (marks.length === 0) return null
  return (
    <ul className="frame-marks" aria-label="Notes on the Frame">
      {marks.map(({ thread, place, isNew }) => (
        <li
          key={thread.id}
          className="frame-marks-note"
          data-side={place.frameX > 0.85 ? 'left' : 'right'}
          data-end={place.frameY < 0.1 ? 'below' : 'above'}
          style={{ left: `${place.frameX * 100}%`, top: `${place.frameY * 100}%` }}
        >
          <span className="frame-marks-dot" data-note-place={thread.id} aria-hidden />
          <NoteMark thread={thread} isNew={isNew} className="frame-marks-number" />
        </li>
      ))}
    </ul>
  )
}
