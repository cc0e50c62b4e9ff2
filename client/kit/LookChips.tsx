import { looksInOrder } from '../session/looksInOrder.ts'
import { useBoard } from '../session/useBoard.ts'
import { turnLook, useChosenLooks } from './chosenLooks.ts'

/** Which looks are packed for. */
export function LookChips() {
  const plan = useBoard((board) => board.plan)
  const chosen = useChosenLooks()
  return (
    <fieldset className="look-chips">
      <legend className="heard">Looks to pack for</legend>
      {looksInOrder(plan).map(([id, look]) => (
        <label key={id} className="look-chip">
          <input type="checkbox" checked={chosen.includes(id)} onChange={(event) => turnLook(id, event.currentTarget.checked)} />
          {look.name}
        </label>
      ))}
    </fieldset>
  )
}
