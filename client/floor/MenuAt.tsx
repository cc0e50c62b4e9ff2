import { DropdownMenu } from 'radix-ui'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Result } from '../../shared-core/plan/result.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { aimAtNose, duplicateThing, removeThing, switchThing, toOtherSide } from './gestures/thingEdits.ts'
import type { ThingKey } from './things.ts'
import type { DrawnPoint } from './view/projection.ts'

interface MenuAtProps {
  readonly thing: ThingKey
  readonly at: DrawnPoint
  readonly onClose: () => void
  /** Once it is gone: the keyboard needs a place to go to. */
  readonly onClosed: () => void
}

/** The few things to do with a thing, where it was pressed. */
export function MenuAt({ thing, at, onClose, onClosed }: MenuAtProps) {
  const store = useBoardStore()
  const mayEdit = useBoard((board) => board.mayEdit)
  const because = useBoard((board) => board.mayNotBecause)
  const on = useBoard((board) => (thing.kind === 'light' ? (board.plan.looks[board.lookId]?.lights[thing.id]?.on ?? true) : true))
  const isLight = thing.kind === 'light'
  const wasPlaced = 'id' in thing

  function write(result: Result<{ readonly edit: PlanEdit; readonly key?: ThingKey }>): void {
    if (!result.ok) return store.say(result.message)
    store.getState().edit(result.edit)
    if (result.key !== undefined) store.getState().select(result.key)
  }
  const now = () => store.getState()

  return (
    <DropdownMenu.Root open onOpenChange={(open) => !open && onClose()}>
      <DropdownMenu.Trigger asChild>
        <span className="floor-menu-spot" style={{ transform: `translate(${at[0]}px, ${at[1]}px)` }} />
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="floor-menu" align="start" sideOffset={4} collisionPadding={8}
          onCloseAutoFocus={(event) => {
            event.preventDefault()
            onClosed()
          }}
        >
          {!mayEdit && <p className="floor-menu-words">{because ?? 'To look at only.'}</p>}
          {isLight && <Item disabled={!mayEdit} words={on ? 'Switch off' : 'Switch on'} onChoose={() => write(switchThing(now().plan, now().lookId, thing))} />}
          {isLight && <Item disabled={!mayEdit} words="Aim at the nose" onChoose={() => write(aimAtNose(now().plan, now().lookId, thing))} />}
          {wasPlaced && <Item disabled={!mayEdit} words="Same distance on the other side" onChoose={() => write(toOtherSide(now().plan, now().lookId, thing))} />}
          {wasPlaced && thing.kind !== 'point' && <Item disabled={!mayEdit} words="Duplicate" keys="Shift D" onChoose={() => write(duplicateThing(now().plan, now().lookId, thing))} />}
          {wasPlaced && <Item disabled={!mayEdit} words="Remove" keys="Delete" onChoose={() => write(removeThing(now().plan, now().lookId, thing))} />}
          {!wasPlaced && <p className="floor-menu-words">Drag it to move it; its numbers are in the list.</p>}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  )
}

interface ItemProps {
  readonly words: string
  readonly keys?: string
  readonly disabled: boolean
  readonly onChoose: () => void
}

function Item({ words, keys, disabled, onChoose }: ItemProps) {
  return (
    <DropdownMenu.Item className="floor-menu-item" disabled={disabled} onSelect={onChoose}>
      {words}
      {keys !== undefined && <kbd>{keys}</kbd>}
    </DropdownMenu.Item>
  )
}
