import { lazy, Suspense } from 'react'
import { formatStops } from '../../shared-core/plan/entry/stops.ts'
import type { Board, Selection } from '../session/board.ts'
import { useBoard } from '../session/useBoard.ts'

/** Worked out when the board is idle; the line stands without it. */
const DriftOnTape = lazy(async () => ({ default: (await import('../ask/drift/DriftOnTape.tsx')).DriftOnTape }))

interface Gist {
  /** As on tape. */
  readonly letter: string | null
  readonly name: string
  readonly more: string
}

/** The picked thing in one line. */
export function DetailLine({ selection }: { readonly selection: Selection }) {
  const look = useBoard((board) => board.shown.looks[board.lookId])
  const prediction = useBoard((board) => board.prediction)
  const { letter, name, more } = gistOf(selection, look, prediction)
  return (
    <p className="detail-line-words">
      {letter !== null && <span className="tape detail-line-letter">{letter}</span>}
      <span className="detail-line-name">{name}</span>
      <span className="detail-line-more">
        {more}
        {(selection.kind === 'light' || selection.kind === 'piece') && (
          <Suspense fallback={null}>
            <DriftOnTape id={selection.id} />
          </Suspense>
        )}
      </span>
    </p>
  )
}

function gistOf(selection: Selection, look: Board['shown']['looks'][string] | undefined, prediction: Board['prediction']): Gist {
  const plain = (name: string, more = ''): Gist => ({ letter: null, name, more })
  switch (selection.kind) {
    case 'light': {
      const light = prediction.lights.find((one) => one.id === selection.id)
      if (light === undefined) return plain('This light is gone')
      const served = prediction.areas.find((area) => area.id === light.serves)?.label ?? light.serves
      const level = light.level.stops === null ? `nothing reaches the ${served}` : `${formatStops(light.level.stops)} at the ${served}`
      return { letter: light.letter, name: light.summary, more: level }
    }
    case 'area': {
      const area = prediction.areas.find((one) => one.id === selection.id)
      if (area === undefined) return plain('This area is gone')
      return plain(area.label, area.meter.stops === null ? 'dark' : `${formatStops(area.meter.stops)}, ${area.colour.words}`)
    }
    case 'piece':
      return plain(look?.pieces[selection.id]?.label ?? 'This piece is gone')
    case 'point':
      return plain(look?.points[selection.id]?.label ?? 'This point is gone')
    case 'camera':
      return plain('Camera', look === undefined ? '' : `${look.camera.focalLengthMillimetres} mm`)
    case 'subject':
      return plain('Subject', look?.subject.name ?? '')
    case 'backdrop':
      return plain('Backdrop', prediction.framing.backdropFillsFrame ? 'fills the frame' : 'does not fill the frame')
    case 'room':
      return plain('Room')
    case 'kit':
      return plain('Kit')
  }
}
