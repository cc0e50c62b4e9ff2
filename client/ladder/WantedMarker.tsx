import { useAskPanel } from '../ask/askPanelStore.ts'
import { useBoard } from '../session/useBoard.ts'
import { signedStops } from './areaNames.ts'
import type { PulledArea } from './areaPull.ts'
import type { LadderLayout } from './ladderLayout.ts'
import { heightOf } from './scale.ts'

const MARKER_PIXELS = 36

/** The marker in the hand: at the level wanted, whatever the lights can give by then. */
export function WantedMarker({ pulled, layout }: { readonly pulled: PulledArea; readonly layout: LadderLayout }) {
  const colour = useBoard(({ prediction }) => prediction.areas.find(({ id }) => id === pulled.areaId)?.colour.display)
  const { rulerLeft, rulerRight, patchRight } = layout.columns
  const { topPixels, bottomPixels } = layout.scale
  const atLevel = heightOf(layout.scale, pulled.wantedStops)
  const middle = Math.min(bottomPixels + 4, Math.max(topPixels - 4, atLevel))
  return (
    <g className="ladder-pulled" aria-hidden>
      <path d={`M${patchRight + 4} ${middle}L${rulerLeft - 3} ${atLevel}H${rulerRight}`} className="ladder-pulled-line" />
      <rect x={3} y={middle - MARKER_PIXELS / 2} width={patchRight + 1} height={MARKER_PIXELS} rx={4} className="ladder-pulled-body" />
      <rect x={patchRight - 16} y={middle - 12} width={14} height={24} rx={1} style={{ fill: colour }} className="ladder-patch" />
      <text x={patchRight - 24} y={middle - 7.5} className="ladder-pulled-wanted">{signedStops(pulled.wantedStops)} wanted</text>
      <text x={patchRight - 24} y={middle + 8.5} className="ladder-pulled-now">now {signedStops(pulled.nowStops)}</text>
    </g>
  )
}

/** Levels wanted of areas while Ask is open, as rings on the ruler: a light's wanted level has its ring on the other side. */
export function WantedRings({ layout }: { readonly layout: LadderLayout }) {
  const isOpen = useAskPanel((state) => state.isOpen)
  const lookId = useBoard((board) => board.lookId)
  const wants = useAskPanel((state) => state.wantsOf[lookId])
  if (!isOpen || !wants) return null
  return (
    <g aria-hidden>
      {wants.map((want) => want.kind === 'area-level' && (
        <circle key={want.areaId} cx={layout.columns.rulerLeft} cy={heightOf(layout.scale, want.stops)} r={3.5} className="ladder-wanted" />
      ))}
    </g>
  )
}
