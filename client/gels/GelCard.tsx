import type { ReactNode } from 'react'
import type { GelPrediction } from '../../shared-core/predict/prediction.ts'

interface GelCardProps {
  readonly name: string
  readonly effect: GelPrediction
  /** Sheets in the drawer. */
  readonly sheets: number
  /** Whether it would read white behind, in words; left out without a light. */
  readonly whiteBehind?: string
  readonly onTake?: () => void
  readonly children?: ReactNode
}

/** A sheet as what it does: on white, on this skin, what it costs, and whether it whitens behind. */
export function GelCard({ name, effect, sheets, whiteBehind, onTake, children }: GelCardProps) {
  const face = (
    <>
      <span className="gel-card-patches" aria-hidden>
        <span style={{ background: effect.onWhite }} />
        <span style={{ background: effect.onSkin }} />
      </span>
      <span className="gel-card-name">
        <b>{name}</b>
        <span>{effect.words}</span>
      </span>
      <span className="gel-card-costs">
        <span>
          meter <b>−{effect.meterLossStops.toFixed(1)}</b>
        </span>
        <span>
          white-out <b>{effect.whiteOutStops.toFixed(1)}</b>
        </span>
      </span>
      <span className="gel-card-behind">{whiteBehind ?? (sheets === 0 ? 'to be bought' : `${sheets} ${sheets === 1 ? 'sheet' : 'sheets'} in the drawer`)}</span>
    </>
  )
  return (
    <li className="gel-card">
      {onTake ? (
        <button type="button" className="gel-card-face" onClick={onTake}>
          {face}
        </button>
      ) : (
        <div className="gel-card-face">{face}</div>
      )}
      {children}
    </li>
  )
}
