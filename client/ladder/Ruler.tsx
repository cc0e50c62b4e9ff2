import { memo } from 'react'
import type { LadderLayout } from './ladderLayout.ts'
import { signedStops } from './areaNames.ts'
import { BOTTOM_STOPS, fullStopsAround, heightOf, TOP_STOPS } from './scale.ts'

interface RulerProps {
  readonly layout: LadderLayout
  readonly takingFNumber: number
  readonly heightPixels: number
}

const wholeStops = Array.from({ length: TOP_STOPS - BOTTOM_STOPS + 1 }, (_, i) => TOP_STOPS - i)
const thirds = wholeStops.slice(0, -1).flatMap((stops) => [stops - 1 / 3, stops - 2 / 3])

/** What the scale is engraved on: beneath the white lines, as its figures are above them. */
export const RulerBody = memo(function RulerBody({ layout, heightPixels }: Pick<RulerProps, 'layout' | 'heightPixels'>) {
  const { rulerLeft, rulerRight } = layout.columns
  return <rect x={rulerLeft} y={0} width={rulerRight - rulerLeft} height={heightPixels} className="ladder-ruler-body" aria-hidden />
})

/** The scale itself: stops at its left edge, the f-numbers a meter would show at its right, the aperture in the middle. */
export const Ruler = memo(function Ruler({ layout, takingFNumber }: Omit<RulerProps, 'heightPixels'>) {
  const { scale, columns } = layout
  const { rulerLeft, rulerRight } = columns
  const middle = (rulerLeft + rulerRight) / 2
  const atAperture = heightOf(scale, 0)
  return (
    <g className="ladder-ruler" aria-hidden>
      {thirds.map((stops) => (
        <path key={stops} d={`M${rulerLeft} ${heightOf(scale, stops)}h3M${rulerRight} ${heightOf(scale, stops)}h-3`} className="ladder-tick" />
      ))}
      {wholeStops.map((stops) => (
        <g key={stops}>
          <path d={`M${rulerLeft} ${heightOf(scale, stops)}h4`} className="ladder-tick ladder-tick-whole" />
          {stops !== 0 && (
            <text x={rulerLeft + 7} y={heightOf(scale, stops)} className="ladder-tick-stops">
              {signedStops(stops, 0)}
            </text>
          )}
        </g>
      ))}
      {fullStopsAround(takingFNumber).map(({ engraved, stops }) => (
        <g key={engraved}>
          <path d={`M${rulerRight} ${heightOf(scale, stops)}h-4`} className="ladder-tick ladder-tick-whole" />
          {Math.abs(stops) > 0.3 && (
            <text x={rulerRight - 7} y={heightOf(scale, stops)} className="ladder-tick-engraved">
              {engraved}
            </text>
          )}
        </g>
      ))}
      <rect x={rulerLeft} y={atAperture - 11} width={rulerRight - rulerLeft} height={22} className="ladder-aperture" />
      <text x={middle} y={atAperture} className="ladder-aperture-words">
        f/{Number(takingFNumber.toFixed(1))}
      </text>
    </g>
  )
})
