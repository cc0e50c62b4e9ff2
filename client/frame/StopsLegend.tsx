import { greyOfBand, HIGHEST_BAND, LOWEST_BAND } from '../../shared-core/picture/views.ts'

const bands = Array.from({ length: HIGHEST_BAND - LOWEST_BAND + 1 }, (_, i) => HIGHEST_BAND - i)

/** What the greys of the stops view stand for. */
export function StopsLegend() {
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

/** How each clipped channel is marked. */
export function ClippingLegend() {
  return <p className="frame-reading clipping-legend">Clipped: red leans right ╱ · green stands │ · blue leans left ╲ · all three plain white</p>
}
