import { formatStops } from '../../shared-core/plan/entry/stops.ts'
import type { Selection } from '../session/board.ts'
import { useBoard } from '../session/useBoard.ts'
import { openAsk } from './askPanelStore.ts'

/** Opens Ask, for those who may change the plan. */
export function AskButton({ className = '' }: { readonly className?: string }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  if (!mayEdit) return null
  return <button type="button" className={`button ${className}`} aria-keyshortcuts="/" onClick={() => openAsk()}>Ask</button>
}

/** Opens Ask on the picked area or light: its name and its level stand in the line, to be typed over. */
export function AskHere({ selection }: { readonly selection: Selection }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const words = useBoard(({ prediction }) => {
    if (selection.kind === 'light') {
      const light = prediction.lights.find(({ id }) => id === selection.id)
      return light && `${light.letter} ${formatStops(light.level.stops ?? 0)}`
    }
    if (selection.kind !== 'area' && selection.kind !== 'point') return undefined
    const area = prediction.areas.find(({ id }) => id === selection.id)
    return area && `${area.label} ${formatStops(area.meter.stops ?? 0)}`
  })
  if (!mayEdit || words === undefined) return null
  return <button type="button" className="button ask-here" aria-label={`Ask for another level than ${words}`} onClick={() => openAsk(words)}>Ask</button>
}
