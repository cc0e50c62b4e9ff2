import { useMemo, useSyncExternalStore } from 'react'
import { greyOfBand, HIGHEST_BAND, LOWEST_BAND, type PictureView } from '../../shared-core/picture/views.ts'
import { useBoard } from '../session/useBoard.ts'
import { clipsAnywhere } from './clipping.ts'
import { onShownFrame, shownFrame } from './picture/shownFrame.ts'
import { useLeaderTints } from './useLeaderTints.ts'
import './ViewLegend.css'

/** What the greys, letters, tints and lines of a view stand for. */
export function ViewLegend({ view }: { readonly view: PictureView }) {
  switch (view) {
    case 'picture':
      return null
    case 'stops':
      return <StopsLegend />
    case 'clipping':
      return <ClippingLegend />
    case 'leaders':
      return <LeadersLegend />
  }
}

const bands = Array.from({ length: HIGHEST_BAND - LOWEST_BAND + 1 }, (_, i) => HIGHEST_BAND - i)

function StopsLegend() {
  return (
    <ol className="stops-legend" aria-label="Stops from mid-grey">
      {bands.map((band) => {
        const grey = greyOfBand(band)
        return (
          <li key={band} style={{ background: `rgb(${grey} ${grey} ${grey})`, color: grey > 110 ? '#0c0c0c' : '#dcdcda' }}>
            {band > 0 ? `+${band}` : band === 0 ? 'grey' : `−${-band}`}
          </li>
        )
      })}
    </ol>
  )
}

function ClippingLegend() {
  const picture = useSyncExternalStore(onShownFrame, shownFrame)
  const nothingClips = useMemo(() => picture !== null && !clipsAnywhere(picture.linear), [picture])
  return (
    <ul className="view-legend" aria-label="Clipped channels">
      {nothingClips && <li><b>Nothing clips</b></li>}
      <li><b>R</b> ╱ red clips</li>
      <li><b>G</b> │ green clips</li>
      <li><b>B</b> ╲ blue clips</li>
      <li><b>white</b> all three clip</li>
    </ul>
  )
}

function LeadersLegend() {
  const lights = useBoard((board) => board.prediction.lights)
  const tints = useLeaderTints()
  const inLetters = lights.filter(({ on }) => on).sort((a, b) => (a.letter < b.letter ? -1 : 1))
  return (
    <ul className="view-legend" aria-label="Which light gives most, by letter">
      {inLetters.map(({ id, letter, gel }) => (
        <li key={id}>
          <span className="view-legend-patch" style={{ background: `rgb(${(tints[id] ?? []).map(Math.round).join(' ')})` }} />
          <b>{letter}</b> {gel.clear ? 'clear' : gel.name}
        </li>
      ))}
      <li>paler: shared</li>
      <li>hatched: none gives half</li>
    </ul>
  )
}
