import { ChevronDown } from 'lucide-react'
import { useState } from 'react'
import { addLook, duplicateLook, removeLook } from '../../../shared-core/plan/edits/looks.ts'
import { changeLook } from '../../../shared-core/plan/edits/look.ts'
import { Popover } from '../../controls/Popover.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { ask } from '../../session/pageStore.ts'
import { looksInOrder } from '../../session/looksInOrder.ts'
import { useBoard } from '../../session/useBoard.ts'
import { usePerform } from '../../session/usePerform.ts'
import './LookMenu.css'

interface LookMenuProps {
  /** To choose among the looks, and not to work on them. */
  readonly toChoose?: boolean
}

/** Which look is on the board; the others, a new one, a copy. */
export function LookMenu({ toChoose = false }: LookMenuProps) {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const mayEdit = useBoard((board) => board.mayEdit)
  const showLook = useBoard((board) => board.showLook)
  const perform = usePerform()
  const [open, setOpen] = useState(false)
  const looks = looksInOrder(plan)
  const name = plan.looks[lookId]?.name ?? ''

  function addThen(made: ReturnType<typeof addLook>): void {
    if (perform(made) && made.ok) showLook(made.lookId)
    setOpen(false)
  }

  return (
    <Popover
      label="Looks of this job"
      open={open}
      onOpen={setOpen}
      trigger={
        <button type="button" className="button look-menu-trigger" aria-label={`Look: ${name}. Change look`}>
          <span className="look-menu-name">{name}</span>
          <ChevronDown size={14} aria-hidden />
        </button>
      }
    >
      <ul className="look-menu-list">
        {looks.map(([id, look]) => (
          <li key={id}>
            <button
              type="button"
              className="button look-menu-look"
              aria-current={id === lookId}
              onClick={() => {
                showLook(id)
                setOpen(false)
              }}
            >
              {look.name}
            </button>
          </li>
        ))}
      </ul>
      {looks.length > 1 && (
        <button
          type="button"
          className="button look-menu-compare"
          onClick={() => {
            setOpen(false)
            ask({ kind: 'proof-sheet' })
          }}
        >
          Looks side by side…
        </button>
      )}
      {mayEdit && !toChoose && (
        <div className="look-menu-work">
          <TextField label="Name of this look" value={name} maxLength={120} onDone={(next) => perform(changeLook(plan, lookId, { name: next }))} />
          <div className="look-menu-buttons">
            <button type="button" className="button" onClick={() => addThen(duplicateLook(plan, lookId))}>
              Copy this look
            </button>
            <button type="button" className="button" onClick={() => addThen(addLook(plan))}>
              New look
            </button>
            <button
              type="button"
              className="button"
              disabled={looks.length < 2}
              onClick={() => {
                perform(removeLook(plan, lookId), `${name} is taken out. Undo brings it back`)
                setOpen(false)
              }}
            >
              Take out
            </button>
          </div>
        </div>
      )}
    </Popover>
  )
}
