import { usePinnable } from '../notes/pencil/pinnable.ts'
import type { GelPrediction } from '../../shared-core/predict/prediction.ts'

/** What a gel does to white and to this skin, and what it costs: the meter's loss, and how far past clear it whitens. */
export function GelChips({ gel, pin }: { readonly gel: GelPrediction; readonly pin: string | null }) {
  const pinnable = usePinnable(pin, gel.words)
  return (
    <div className="gel-chips" {...pinnable}>
      <span className="gel-chip" style={{ background: gel.onWhite }} title={`${gel.words} on white`} />
      <span className="gel-chip" style={{ background: gel.onSkin }} title={`${gel.words} on this skin`} />
      <span className="gel-chips-words">
        <span className="heard">{`On white and on this skin: ${gel.words}. `}</span>
        {gel.clear ? (
          'clear'
        ) : (
          <>
            meter −{gel.meterLossStops.toFixed(1)}
            <br />
            white-out {gel.whiteOutStops.toFixed(1)}
          </>
        )}
      </span>
    </div>
  )
}
