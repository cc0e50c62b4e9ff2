import { DropdownMenu } from 'radix-ui'
import { useRef } from 'react'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { placeChoices, startPlacing, type PlaceChoice, type Placing } from './gestures/placing.ts'

interface PlaceMenuProps {
  readonly onPlacing: (placing: Placing) => void
}

/** The kit by its trade names; what is chosen is then set down where the person presses. */
export function PlaceMenu({ onPlacing }: PlaceMenuProps) {
  const store = useBoardStore()
  const plan = useBoard((board) => board.plan)
  const mayEdit = useBoard((board) => board.mayEdit)
  const because = useBoard((board) => board.mayNotBecause)
  const choices = placeChoices(plan)

  // The keyboard goes on to where the thing is set down, not back to this button.
  const chosen = useRef(false)

  function choose(choice: PlaceChoice): void {
    const board = store.getState()
    const started = startPlacing(board.plan, board.lookId, choice)
    chosen.current = started.ok
    if (started.ok) onPlacing(started.placing)
    else store.say(started.message)
  }

  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger className="button button-lined floor-place" disabled={!mayEdit} {...(!mayEdit && because !== null && { 'aria-description': because })}>
        Place…
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="floor-menu" align="end" sideOffset={6} collisionPadding={8}
          onCloseAutoFocus={(event) => {
            if (chosen.current) event.preventDefault()
            chosen.current = false
          }}
        >
          <DropdownMenu.Group>
            <DropdownMenu.Label className="floor-menu-words">A head with</DropdownMenu.Label>
            {choices.filter((choice) => choice.kind === 'light').map((choice) => <Choice key={choice.name} choice={choice} onChoose={choose} />)}
          </DropdownMenu.Group>
          <DropdownMenu.Separator className="floor-menu-line" />
          {choices.filter((choice) => choice.kind !== 'light').map((choice) => <Choice key={choice.name} choice={choice} onChoose={choose} />)}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  )
}

function Choice({ choice, onChoose }: { readonly choice: PlaceChoice; readonly onChoose: (choice: PlaceChoice) => void }) {
  return <DropdownMenu.Item className="floor-menu-item" onSelect={() => onChoose(choice)}>{choice.name}</DropdownMenu.Item>
}
