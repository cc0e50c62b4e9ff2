import { useRef } from 'react'
import { formatFNumber } from '../../../shared-core/plan/entry/aperture.ts'
import { formatIso, formatKelvin } from '../../../shared-core/plan/entry/camera.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { LookCanvas } from '../../frame/picture/LookCanvas.tsx'
import { useElementSize } from '../../frame/useElementSize.ts'
import { phone, useMedia } from '../../shell/useMedia.ts'
import { Differences } from './Differences.tsx'
import { VoteOn } from './VoteOn.tsx'
import type { BallotOnSheet } from './useBallotHere.ts'
import { transformOf, type Zoom } from './zoom.ts'

interface ProofProps {
  readonly plan: Plan
  readonly lookId: string
  readonly zoom: Zoom
  readonly comparedWith: { readonly plan: Plan; readonly lookId: string } | null
  /** How this look is finished, in words, where that tells it from another. */
  readonly ownFinish: string | null
  readonly isShown: boolean
  readonly ballot: BallotOnSheet
  readonly onShow: () => void
  /** Null where this person may not. */
  readonly onCopy: (() => void) | null
}

/** No display shows more of a proof, and a larger one takes long to draw. */
const WIDEST_PIXELS = 900
/** Sizes in steps, so that a zoom does not draw anew with every turn of the wheel. */
const SIZE_STEP = 1.5

/** One look: its Frame, its camera in a line, what tells it from the first, and the vote. */
export function Proof({ plan, lookId, zoom, comparedWith, ownFinish, isShown, ballot, onShow, onCopy }: ProofProps) {
  const box = useRef<HTMLDivElement>(null)
  const size = useElementSize(box)
  // There the pictures have the room: all but the name and the vote is behind one word.
  const onPhone = useMedia(phone)
  const look = plan.looks[lookId]
  if (look === undefined) return null
  const { camera } = look
  const aspect = camera.sensorWidthMillimetres / camera.sensorHeightMillimetres
  const width = size === null ? 0 : Math.min(WIDEST_PIXELS, Math.round(size.widthPixels * devicePixelRatio * stepped(zoom.times)))
  const onBoard = (
    <>
      {isShown ? <span className="proof-shown">on the board</span> : <button type="button" className="button button-lined" onClick={onShow}>To the board</button>}
      {onCopy !== null && <button type="button" className="button" onClick={onCopy}>Copy</button>}
    </>
  )
  const more = (
    <>
      <p className="proof-camera">{formatFNumber(camera.fNumber)} · {formatIso(camera.isoSpeed)} · {formatKelvin(camera.whiteBalanceKelvin)}</p>
      {ownFinish !== null && <p className="proof-camera">Its own finish: {ownFinish}</p>}
      {comparedWith !== null && <Differences from={comparedWith} plan={plan} lookId={lookId} />}
    </>
  )
  return (
    <article className="proof" aria-label={look.name}>
      <div ref={box} className="proof-window" data-proof style={{ aspectRatio: aspect, touchAction: zoom.times > 1 ? 'none' : 'pan-y' }}>
        {width > 0 && (
          <div className="proof-picture" style={{ transform: transformOf(zoom) }}>
            <LookCanvas plan={plan} lookId={lookId} widthPixels={width} heightPixels={Math.round(width / aspect)} description={`Predicted picture of ${look.name}`} />
          </div>
        )}
      </div>
      <div className="proof-words">
        {onPhone ? (
          <>
            <h3 className="proof-name">{look.name}</h3>
            <VoteOn ballot={ballot} lookId={lookId} lookName={look.name} />
            <details className="proof-more">
              <summary aria-label={`More of ${look.name}`}>More</summary>
              <div className="proof-words-more">{onBoard}{more}</div>
            </details>
          </>
        ) : (
          <>
            <div className="proof-head">
              <h3 className="proof-name">{look.name}</h3>
              {onBoard}
            </div>
            <VoteOn ballot={ballot} lookId={lookId} lookName={look.name} />
            {more}
          </>
        )}
      </div>
    </article>
  )
}

function stepped(times: number): number {
  return times <= 1 ? 1 : times <= SIZE_STEP ? SIZE_STEP : SIZE_STEP * SIZE_STEP
}
