import { useCallback, useMemo, useRef, useState } from 'react'
import { useElementSize } from '../frame/useElementSize.ts'
import { LadderNotes } from '../notes/pencil/LadderNotes.tsx'
import { useBoard } from '../session/useBoard.ts'
import { AskButton } from '../ask/AskHere.tsx'
import { AreaLabels } from './AreaLabels.tsx'
import { signedStops } from './areaNames.ts'
import { Feeds } from './Feeds.tsx'
import { feedsOf, type Touched } from './feeds.ts'
import { ladderLayout, leastLadderHeight } from './ladderLayout.ts'
import { LightTapes } from './LightTapes.tsx'
import { Readout } from './Readout.tsx'
import { Ruler, RulerBody } from './Ruler.tsx'
import './StopLadder.css'
import { TypedLevel } from './TypedLevel.tsx'
import { useAreaHand } from './useAreaHand.ts'
import { usePowerHand } from './usePowerHand.ts'
import { useThumbs } from './useThumbs.ts'
import { WantedMarker, WantedRings } from './WantedMarker.tsx'
import { WhiteLines } from './WhiteLines.tsx'

/**
 * The instrument beside the picture: an upright scale in stops around the taking aperture. Areas hang on its left, facing
 * the Frame; lights on its right, as tapes that set their power when dragged, areas ask for the level they are
 * dragged to; white lines across it, one a gel.
 */
export function StopLadder() {
  const prediction = useBoard((board) => board.prediction)
  const selection = useBoard((board) => board.selection)
  const forThumbs = useThumbs()
  const hand = usePowerHand()
  const areaHand = useAreaHand()
  const [typing, setTyping] = useState<{ readonly areaId: string; readonly start: string | null } | null>(null)
  const room = useRef<HTMLDivElement>(null)
  const size = useElementSize(room)
  const [underHand, setUnderHand] = useState<Touched>(null)

  const selected = selection?.kind === 'area' || selection?.kind === 'light' ? selection : null
  const { pulled } = areaHand
  const inHand: Touched = hand.inHand ? { kind: 'light', id: hand.inHand.lightId } : pulled && { kind: 'area', id: pulled.areaId }
  const touched: Touched = inHand ?? underHand ?? (selected && { kind: selected.kind as 'area' | 'light', id: selected.id })
  const feeds = feedsOf(prediction, touched)
  const heightPixels = Math.max(size?.heightPixels ?? 0, leastLadderHeight(prediction, forThumbs))
  const widthPixels = size?.widthPixels ?? 0
  const layout = useMemo(
    () => ladderLayout(prediction, { widthPixels, heightPixels, forThumbs }),
    [prediction, widthPixels, heightPixels, forThumbs],
  )
  const touch = useCallback((next: Touched) => setUnderHand(next), [])
  const typed = typing && layout.areas.find(({ thing }) => thing.area.id === typing.areaId)

  /** Back on the marker it was typed for. */
  function leaveTyping(): void {
    const marker = typing && room.current?.querySelector<SVGGElement>(`[data-area="${CSS.escape(typing.areaId)}"]`)
    setTyping(null)
    marker?.focus({ preventScroll: true })
  }

  return (
    <section className="ladder" aria-label="Stop Ladder" data-touched={touched !== null}>
      <div ref={room} className="ladder-room">
        {size && (
          <svg className="ladder-drawing" width={widthPixels} height={heightPixels} role="group" aria-label="Levels in stops from the aperture">
            <RulerBody layout={layout} heightPixels={heightPixels} />
            <WhiteLines layout={layout} />
            <Ruler layout={layout} takingFNumber={prediction.taking.fNumber} />
            <Feeds layout={layout} feeds={feeds} />
            <AreaLabels layout={layout} feeds={feeds} touched={touched} touch={touch} hand={areaHand} onType={(areaId, start) => setTyping({ areaId, start: start ?? null })} forThumbs={forThumbs} />
            <LightTapes layout={layout} feeds={feeds} touched={touched} touch={touch} hand={hand} forThumbs={forThumbs} />
            <WantedRings layout={layout} />
            {pulled && <WantedMarker pulled={pulled} layout={layout} />}
          </svg>
        )}
        {size && <LadderNotes layout={layout} />}
        {typing && typed && (
          <TypedLevel
            key={typing.areaId}
            label={typed.thing.area.label}
            topPixels={typed.labelPixels}
            start={typing.start ?? signedStops(typed.thing.area.meter.stops)}
            isBegun={typing.start !== null}
            onDone={(stops) => {
              leaveTyping()
              areaHand.type(typing.areaId, stops)
            }}
            onLeave={leaveTyping}
          />
        )}
      </div>
      <div className="ladder-foot">
        <Readout prediction={prediction} touched={touched} pastRangeStops={hand.inHand?.pastRangeStops ?? 0} pulled={pulled} />
        <AskButton className="ladder-ask" />
      </div>
    </section>
  )
}
