import { useCallback, useMemo, useRef, useState } from 'react'
import { useElementSize } from '../frame/useElementSize.ts'
import { useBoard } from '../session/useBoard.ts'
import { AreaLabels } from './AreaLabels.tsx'
import { Feeds } from './Feeds.tsx'
import { feedsOf, type Touched } from './feeds.ts'
import { ladderLayout, leastLadderHeight } from './ladderLayout.ts'
import { LightTapes } from './LightTapes.tsx'
import { Readout } from './Readout.tsx'
import { Ruler } from './Ruler.tsx'
import './StopLadder.css'
import { usePowerHand } from './usePowerHand.ts'
import { useThumbs } from './useThumbs.ts'
import { WhiteLines } from './WhiteLines.tsx'

/**
 * The instrument beside the picture: an upright scale in stops around the taking aperture. Areas hang on its left, facing
 * the Frame; lights on its right, as tapes that set their power when dragged; white lines across it, one a gel.
 */
export function StopLadder() {
  const prediction = useBoard((board) => board.prediction)
  const selection = useBoard((board) => board.selection)
  const forThumbs = useThumbs()
  const hand = usePowerHand()
  const room = useRef<HTMLDivElement>(null)
  const size = useElementSize(room)
  const [underHand, setUnderHand] = useState<Touched>(null)

  const selected = selection?.kind === 'area' || selection?.kind === 'light' ? selection : null
  const touched: Touched = hand.inHand ? { kind: 'light', id: hand.inHand.lightId } : (underHand ?? (selected && { kind: selected.kind as 'area' | 'light', id: selected.id }))
  const feeds = feedsOf(prediction, touched)
  const heightPixels = Math.max(size?.heightPixels ?? 0, leastLadderHeight(prediction, forThumbs))
  const widthPixels = size?.widthPixels ?? 0
  const layout = useMemo(
    () => ladderLayout(prediction, { widthPixels, heightPixels, forThumbs }),
    [prediction, widthPixels, heightPixels, forThumbs],
  )
  const touch = useCallback((next: Touched) => setUnderHand(next), [])

  return (
    <section className="ladder" aria-label="Stop Ladder" data-touched={touched !== null}>
      <div ref={room} className="ladder-room">
        {size && (
          <svg className="ladder-drawing" width={widthPixels} height={heightPixels} role="group" aria-label="Levels in stops from the aperture">
            <Ruler layout={layout} takingFNumber={prediction.taking.fNumber} heightPixels={heightPixels} />
            <WhiteLines layout={layout} />
            <Feeds layout={layout} feeds={feeds} />
            <AreaLabels layout={layout} feeds={feeds} touched={touched} touch={touch} forThumbs={forThumbs} />
            <LightTapes layout={layout} feeds={feeds} touched={touched} touch={touch} hand={hand} forThumbs={forThumbs} />
          </svg>
        )}
      </div>
      <Readout prediction={prediction} touched={touched} pastRangeStops={hand.inHand?.pastRangeStops ?? 0} />
    </section>
  )
}
