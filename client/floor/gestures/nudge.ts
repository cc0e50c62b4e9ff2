import type { PlanEdit } from '../../../shared-core/plan/edit.ts'
import type { BoardStore } from '../../session/boardStore.ts'
import type { Thing, ThingKey } from '../things.ts'
import { moveInSet } from '../view/projection.ts'
import { moveEdit, turnEdit } from './dragEdit.ts'
import { findThing } from './hit.ts'
import { endsSteps, meaningOf, type KeyMeaning } from './keys.ts'
import type { Scene } from './scene.ts'
import { duplicateThing, removeThing } from './thingEdits.ts'

interface Steps {
  readonly thing: Thing
  readonly kind: 'move' | 'turn'
  du: number
  dv: number
  degrees: number
  latest: PlanEdit | null
}

/** The keyboard on the selected thing: steps are shown as they come and written once, when the key is let go. */
export class Nudge {
  private steps: Steps | null = null

  constructor(
    private readonly board: BoardStore,
    private readonly scene: () => Scene,
    /** Puts the keyboard on a thing, or on the first when null. */
    private readonly focusThing: (key: ThingKey | null) => void,
  ) {}

  down(event: KeyboardEvent): void {
    if (event.target instanceof HTMLInputElement) return
    const meaning = meaningOf(event)
    const { selected, things } = this.scene()
    const thing = findThing(things, selected)
    if (meaning === null || thing === null) return
    event.preventDefault()
    if (meaning.kind === 'move' || meaning.kind === 'turn') this.step(thing, meaning)
    else this.act(thing, meaning.kind)
  }

  up(event: KeyboardEvent): void {
    if (endsSteps(event.key)) this.finish()
  }

  /** Writes the steps taken so far. */
  finish(): void {
    const { steps } = this
    this.steps = null
    if (steps === null) return
    if (steps.latest !== null && steps.latest.changes.length > 0) this.board.getState().edit(steps.latest)
    else this.board.getState().hold(null)
  }

  /** Forgets the steps taken so far. */
  cancel(): void {
    if (this.steps !== null) this.board.getState().hold(null)
    this.steps = null
  }

  private step(thing: Thing, meaning: Extract<KeyMeaning, { kind: 'move' | 'turn' }>): void {
    const { mayEdit, mayNotBecause, plan, lookId } = this.board.getState()
    if (!mayEdit) return this.board.say(mayNotBecause ?? 'This board is yours to look at, not to change.')
    if (this.steps !== null && this.steps.kind !== meaning.kind) this.finish()
    const steps = (this.steps ??= { thing, kind: meaning.kind, du: 0, dv: 0, degrees: 0, latest: null })
    const { view } = this.scene()
    if (meaning.kind === 'move') {
      steps.du += meaning.du
      steps.dv += meaning.dv
    } else {
      steps.degrees += meaning.degrees
    }
    const result = steps.kind === 'move'
      ? moveEdit(plan, lookId, steps.thing, moveInSet(view, steps.du, steps.dv))
      : turnEdit(plan, lookId, steps.thing, view, steps.degrees)
    if (!result.ok) return this.board.say(result.message)
    steps.latest = result.edit
    this.board.getState().hold(result.edit)
  }

  private act(thing: Thing, kind: 'remove' | 'duplicate'): void {
    this.finish()
    const { plan, lookId, edit, select } = this.board.getState()
    if (kind === 'remove') {
      const removed = removeThing(plan, lookId, thing.key)
      if (!removed.ok) return this.board.say(removed.message)
      edit(removed.edit)
      if (!this.board.getState().mayEdit) return
      this.focusThing(null)
      return select(null)
    }
    const copy = duplicateThing(plan, lookId, thing.key)
    if (!copy.ok) return this.board.say(copy.message)
    edit(copy.edit)
    if (!this.board.getState().mayEdit) return
    select(copy.key)
    this.focusThing(copy.key)
  }
}
