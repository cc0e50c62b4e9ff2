import { createStore, type StoreApi } from 'zustand/vanilla'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import { shareStructure } from '../../shared-core/plan/reading/shareStructure.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { PictureView } from '../../shared-core/picture/views.ts'
import type { Board, ConnectionView, Person, Reopened, Sees, Selection, SharedPage, Units } from './board.ts'
import { createBeforeOfOthers } from './beforeOfOthers.ts'
import { fieldsAtStart, type BoardFields, type BoardParts } from './boardStart.ts'
import type { OwnPresence } from './company.ts'
import { handsThatCount, withHands } from './handsOver.ts'
import { pageClock } from './latestOnly.ts'
import { firstLookId } from './looksInOrder.ts'
import type { PlanSeenChange } from './planSeenChange.ts'
import { createPacedNumbers } from './pacedNumbers.ts'
import type { ChangedBy } from './planSource.ts'
import { rightsOf, rightsOver } from './rights.ts'
import { stillThere } from './stillThere.ts'

/** What others do within so long of one another is one doing to whoever looks on. Common practice, no source. */
const ONE_DOING_MS = 4_000
export interface BoardStore extends StoreApi<Board> {
  /** The connection's latest state, as the person should hear it. */
  showConnection(connection: ConnectionView): void
  /** Says one line to the person. */
  say(words: string): void
  /** Calls after every edit that has reached the plan, one's own and others'; returns how to stop. */
  onPlanChange(listener: (change: PlanSeenChange) => void): () => void
  /** Stops listening to plan and company. */
  close(): void
}

/** The board over a plan and a company. Throws when the plan holds no look: a reader never returns such a plan. */
export function createBoardStore(parts: BoardParts): BoardStore {
  let ownHand: PlanEdit | null = null
  let pointer: OwnPresence['pointer'] = null
  let framePointer: Sees['pointer'] = null
  let pageOpen: SharedPage | null = null
  const beforeOfOthers = createBeforeOfOthers()
  let frameAsked = false
  let beforeLastChange: Plan | null = null
  let shownFrom: readonly unknown[] = []
  const clock = parts.clock ?? pageClock
  let sharedPlan = parts.plan.read().plan
  let lookLeft: string | null = null
  let othersDidAtMs = Number.NEGATIVE_INFINITY
  const numbers = createPacedNumbers({
    predict: parts.predict,
    clock,
    now: () => store.getState(),
    moved: (shown) => store.setState({ shown }),
    predicted: (shown, prediction) => store.setState({ shown, prediction }),
    failed: (error) => {
      // A board that keeps the last picture and says so is of more use than one that is gone.
      console.error(error)
      say('The last change could not be computed: picture and numbers are from before it. Undo it, or tell us')
    },
  })
  const planListeners = new Set<(change: PlanSeenChange) => void>()

  const store = createStore<Board>()(() => ({
    ...fieldsAtStart(parts),
    edit,
    hold,
    undo: () => step('undo'),
    redo: () => step('redo'),
    select: (selection: Selection | null) => {
      store.setState({ selection })
      tell()
    },
    showLook: (lookId: string) => {
      if (store.getState().plan.looks[lookId] === undefined) return
      store.setState({ lookId, selection: null, soloLightId: null })
      predictNow()
      tell()
    },
    setUnits: (units: Units) => {
      parts.keepUnits(units)
      store.setState({ units })
    },
    point: (place: OwnPresence['pointer']) => {
      pointer = place
      tell()
    },
    solo: (soloLightId: string | null) => {
      store.setState({ soloLightId })
      tell()
    },
    keepBefore: (kept: boolean) => {
      store.setState({ beforeKept: kept, before: kept ? store.getState().plan : beforeLastChange })
      tell()
      say(kept ? 'Kept: Before now shows the Frame as it is here' : 'Before shows the Frame before your last change again')
    },
    seeBefore: (sees: boolean) => {
      store.setState({ seesBefore: sees && store.getState().before !== null, beforeOfAnother: null })
      tell()
    },
    seeBeforeOf: ({ seatId, name }: Pick<Person, 'seatId' | 'name'>) => {
      const plan = beforeOfOthers.of(seatId)
      if (plan === null) return false
      const now = store.getState()
      // Asked again with every move of another's pointer.
      if (now.seesBefore && now.beforeOfAnother?.plan === plan) return true
      store.setState({ seesBefore: true, beforeOfAnother: { name, plan } })
      tell()
      return true
    },
    tellPage: (page: SharedPage | null) => {
      pageOpen = page
      tell()
    },
    lookAs: (frameView: PictureView) => {
      store.setState({ frameView })
      tell()
    },
    pointInFrame: (place: Sees['pointer']) => {
      framePointer = place
      tell()
    },
    lookWith: (looksWith: string | null) => {
      store.setState({ looksWith })
      tell()
    },
    reopen,
    handPenTo: parts.company.handPenTo,
    takePenBack: parts.company.takePenBack,
  }))

  function edit(planEdit: PlanEdit): void {
    const { mayEdit, mayNotBecause } = store.getState()
    ownHand = null
    if (!mayEdit) {
      say(`Not changed. ${mayNotBecause ?? ''}`.trim())
      predictNow()
    } else {
      rememberBefore()
      parts.plan.write(planEdit)
    }
    tell()
  }

  function hold(planEdit: PlanEdit | null): void {
    if (planEdit !== null && !store.getState().mayEdit) return
    ownHand = planEdit
    tell()
    predictOnNextFrame()
  }

  function reopen(kept: Reopened | null): void {
    const { lookId, reopened } = store.getState()
    if (kept === reopened || (kept !== null && kept.plan.looks[kept.lookId] === undefined)) return
    if (reopened === null) lookLeft = lookId
    if (kept !== null) ownHand = null
    // What both plans share, the prediction need not work out again.
    const plan = kept === null ? sharedPlan : shareStructure(sharedPlan, kept.plan)
    showPlan(plan, kept?.lookId ?? lookLeft ?? lookId, { reopened: kept, seesBefore: false, beforeOfAnother: null, soloLightId: null })
    takeRights()
    tell()
  }

  function step(direction: 'undo' | 'redo'): void {
    if (!store.getState().mayEdit) return
    say(direction === 'undo' ? 'Undone' : 'Done again')
    rememberBefore()
    // A plan that knows better what it took back says so after.
    parts.plan[direction]()
  }

  function rememberBefore(): void {
    const { plan, beforeKept } = store.getState()
    beforeLastChange = plan
    if (!beforeKept) store.setState({ before: plan })
  }

  /** Who may only look compares with what was there before others did something to this look. */
  function rememberBeforeOthers(plan: Plan): void {
    const { mayEdit, reopened, beforeKept, lookId } = store.getState()
    if (mayEdit || reopened !== null || plan.looks[lookId] === sharedPlan.looks[lookId]) return
    const isSameDoing = clock.nowMs() - othersDidAtMs < ONE_DOING_MS
    othersDidAtMs = clock.nowMs()
    if (isSameDoing) return
    beforeLastChange = plan
    if (!beforeKept) store.setState({ before: plan })
  }

  function tell(): void {
    const { selection, lookId, frameView, soloLightId, seesBefore, beforeKept, looksWith, reopened } = store.getState()
    const sees: Sees = { view: frameView, soloLightId, before: seesBefore, beforeKept, page: pageOpen, reopened: reopened?.kept ?? null, pointer: framePointer, with: looksWith }
    parts.company.tell({ pointer, selection, inHand: ownHand, lookId, sees })
  }

  /** Many moves of a hand between two pictures cost one prediction. */
  function predictOnNextFrame(): void {
    if (frameAsked) return
    frameAsked = true
    parts.onNextFrame(() => {
      if (frameAsked) predictNow()
    })
  }

  function predictNow(): void {
    frameAsked = false
    const { plan, lookId, people, reopened } = store.getState()
    const handsOf = reopened === null ? people : []
    // A pointer that moves, or a person who comes, changes nothing of what this is made from.
    const madeFrom = [plan, lookId, ...handsThatCount(handsOf), ownHand]
    if (madeFrom.length === shownFrom.length && madeFrom.every((part, index) => part === shownFrom[index])) return
    shownFrom = madeFrom
    const shown = withHands(plan, lookId, ownHand, handsOf)
    numbers.show(shown, lookId, { isInHand: shown !== plan })
  }

  function takePlan(by: ChangedBy = 'self'): void {
    const { plan, repairs } = parts.plan.read()
    const before = sharedPlan
    sharedPlan = plan
    store.setState({ repairs, canUndo: parts.plan.canUndo(), canRedo: parts.plan.canRedo() })
    const { reopened, lookId } = store.getState()
    if (reopened === null) showPlan(plan, lookId)
    if (plan === before || by === null) return
    if (by !== 'self') rememberBeforeOthers(before)
    if (by !== 'self') beforeOfOthers.changed(parts.company.seatsBehind?.(by) ?? [], before)
    const change = { before, after: plan, isOwn: by === 'self', names: by === 'self' ? [] : parts.company.namesBehind?.(by) ?? [] }
    for (const listener of planListeners) listener(change)
  }

  function showPlan(plan: Plan, wantedLookId: string, more: Partial<BoardFields> = {}): void {
    const lookId = plan.looks[wantedLookId] === undefined ? firstLookId(plan) : wantedLookId
    const { selection, shown } = store.getState()
    store.setState({
      plan, lookId, ...more,
      selection: stillThere(selection, plan, lookId) ? selection : null,
      // Nobody is to be shown a look in a plan that has none of that name, not even until it is predicted.
      shown: shown.looks[lookId] === undefined ? plan : shown,
    })
    predictNow()
  }

  function takePeople(): void {
    const people = parts.company.people()
    beforeOfOthers.people(people, sharedPlan)
    store.setState({ people })
    takeRights()
    predictOnNextFrame()
  }

  function takeRights(): void {
    const { people, connection, reopened } = store.getState()
    const rights = reopened === null ? rightsOf(parts.role, people, connection) : rightsOver(reopened.words)
    store.setState(rights)
    if (rights.mayEdit || ownHand === null) return
    ownHand = null
    tell()
    predictOnNextFrame()
  }

  function say(words: string): void {
    // The same words twice are two events: a screen reader, and a line that fades, have to notice the second.
    const sameAgain = store.getState().lastWords === words
    store.setState({ lastWords: sameAgain ? `${words}\u00a0` : words })
  }

  const stops = [parts.plan.onChange(takePlan), parts.company.onChange(takePeople)]
  // The first prediction is of the plan alone; whoever already has something in hand is seen a frame later.
  shownFrom = [store.getState().plan, store.getState().lookId, null]
  predictOnNextFrame()
  tell()
  return {
    ...store,
    showConnection: (connection) => {
      store.setState({ connection })
      takeRights()
    },
    say,
    onPlanChange(listener) {
      planListeners.add(listener)
      return () => planListeners.delete(listener)
    },
    close: () => stops.forEach((stop) => stop()),
  }
}
