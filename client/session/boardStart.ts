import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import type { Board, ConnectionView, Role, Units } from './board.ts'
import type { Company } from './company.ts'
import type { Clock } from './latestOnly.ts'
import { firstLookId } from './looksInOrder.ts'
import type { PlanSource } from './planSource.ts'
import { rightsOf } from './rights.ts'

/** What a board is made of. Everything it needs from outside comes in here, so that it runs without page or network. */
export interface BoardParts {
  readonly plan: PlanSource
  readonly company: Company
  readonly role: Role
  readonly connection: ConnectionView
  readonly predict: (plan: Plan, lookId: string) => Prediction
  /** Runs the callback before the next picture on the screen. */
  readonly onNextFrame: (callback: () => void) => void
  readonly units: Units
  readonly keepUnits: (units: Units) => void
  /** The page's own unless said. */
  readonly clock?: Clock
}

type Does = 'edit' | 'hold' | 'undo' | 'redo' | 'select' | 'showLook' | 'setUnits' | 'point' | 'solo' | 'keepBefore' | 'seeBefore' |
  'seeBeforeOf' | 'tellPage' | 'lookAs' | 'pointInFrame' | 'lookWith' | 'reopen' | 'handPenTo' | 'takePenBack'

/** What a board knows, without what it does. */
export type BoardFields = Omit<Board, Does>

/** A board as it opens: the plan's first look, nothing picked. Throws when the plan holds no look. */
export function fieldsAtStart(parts: BoardParts): BoardFields {
  const { plan, repairs } = parts.plan.read()
  const lookId = firstLookId(plan)
  const people = parts.company.people()
  return {
    plan,
    shown: plan,
    lookId,
    prediction: parts.predict(plan, lookId),
    repairs,
    selection: null,
    role: parts.role,
    ...rightsOf(parts.role, people, parts.connection),
    units: parts.units,
    people,
    connection: parts.connection,
    canUndo: parts.plan.canUndo(),
    canRedo: parts.plan.canRedo(),
    lastWords: '',
    soloLightId: null,
    before: null,
    beforeKept: false,
    seesBefore: false,
    beforeOfAnother: null,
    frameView: 'picture',
    looksWith: null,
    reopened: null,
  }
}
