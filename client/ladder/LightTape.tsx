import { memo } from 'react'
import type { LightPrediction } from '../../shared-core/predict/prediction.ts'
import { signedStops } from './areaNames.ts'
import type { Hung, LadderColumns } from './ladderLayout.ts'
import { heightOf, type LadderScale } from './scale.ts'

interface LightTapeProps {
  readonly hung: Hung<LightPrediction>
  readonly columns: LadderColumns
  readonly scale: LadderScale
  /** Shows how far its head goes, up and down. */
  readonly rangeShown: boolean
  /** How far past that it is pulled. */
  readonly pastRangeStops: number
  readonly forThumbs: boolean
}

const TAPE_PIXELS = 22

/** A light's letter, its gel and its level on a strip of tape, with where it was wanted and how far it can go. */
export const LightTape = memo(function LightTape({ hung, columns, scale, rangeShown, pastRangeStops, forThumbs }: LightTapeProps) {
  const { thing: light, truePixels, labelPixels, pinned } = hung
  const { rulerRight, tapeLeft, tapeWidth } = columns
  const targetPixels = forThumbs ? 48 : TAPE_PIXELS
  const level = light.level.stops
  return (
    <>
      <rect x={tapeLeft - 6} y={labelPixels - targetPixels / 2} width={tapeWidth + 8} height={targetPixels} className="ladder-target" />
      {rangeShown && level !== null && (
        <RangeShown x={rulerRight + 6} scale={scale} full={level + light.stopsInHand} lowest={level - light.stopsAboveLowest} />
      )}
      <path d={`M${rulerRight} ${truePixels}h3L${tapeLeft} ${labelPixels}`} className="ladder-leader ladder-leader-light" />
      {light.wantedStops !== null && <circle cx={rulerRight} cy={heightOf(scale, light.wantedStops)} r={3.5} className="ladder-wanted" />}
      {pastRangeStops !== 0 && (
        <g className="ladder-ghost">
          <rect x={tapeLeft} y={heightOf(scale, (level ?? 0) + pastRangeStops) - TAPE_PIXELS / 2} width={tapeWidth} height={TAPE_PIXELS} rx={1.5} />
        </g>
      )}
      <g data-off={!light.on} className="ladder-tape">
        <rect x={tapeLeft} y={labelPixels - TAPE_PIXELS / 2} width={tapeWidth} height={TAPE_PIXELS} rx={1.5} className="ladder-tape-body" />
        <text x={tapeLeft + 8} y={labelPixels} className="ladder-letter">
          {light.letter}
        </text>
        <rect
          x={tapeLeft + 26}
          y={labelPixels - 6}
          width={12}
          height={12}
          rx={1}
          className={light.gel.clear ? 'ladder-gel ladder-gel-clear' : 'ladder-gel'}
          style={light.gel.clear ? undefined : { fill: light.gel.onWhite }}
        />
        <text x={tapeLeft + tapeWidth - 7} y={labelPixels} className="ladder-level">
          {!light.on ? 'off' : `${pinned === 'above' ? '↑' : pinned === 'below' && level !== null ? '↓' : ''}${signedStops(level)}`}
        </text>
      </g>
      <rect x={tapeLeft - 3} y={labelPixels - TAPE_PIXELS / 2 - 3} width={tapeWidth + 6} height={TAPE_PIXELS + 6} rx={3} className="ladder-focus" />
    </>
  )
})

interface RangeShownProps {
  readonly x: number
  readonly scale: LadderScale
  readonly full: number
  readonly lowest: number
}

function RangeShown({ x, scale, full, lowest }: RangeShownProps) {
  const [top, bottom] = [heightOf(scale, full), heightOf(scale, lowest)]
  return (
    <g className="ladder-range" aria-hidden>
      <path d={`M${x - 3} ${top}h6M${x} ${top}V${bottom}M${x - 3} ${bottom}h6`} />
      {top > scale.topPixels && <path d={`M${x} ${scale.topPixels}V${top - 3}`} className="ladder-range-past" />}
      {bottom < scale.bottomPixels && <path d={`M${x} ${bottom + 3}V${scale.bottomPixels}`} className="ladder-range-past" />}
    </g>
  )
}
