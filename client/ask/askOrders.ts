import type { Answer, Way } from '../../shared-core/ask/answer.ts'
import type { LookLeft } from '../../shared-core/ask/fewerHeads.ts'
import type { ColourMatch, ColourTarget } from '../../shared-core/ask/matchColour.ts'
import type { Lack } from '../../shared-core/ask/remedies.ts'
import type { SpillCures } from '../../shared-core/ask/spillCures.ts'
import type { Want } from '../../shared-core/ask/want.ts'
import type { ThingDrifts } from '../../shared-core/ask/whatMatters.ts'
import type { WhiteBehind } from '../../shared-core/ask/whiteBehind.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { StandInLines } from '../agree/standIns/standInLines.ts'
import type { AreaId } from '../../shared-core/predict/prediction.ts'

/** What can be asked about a look, beside the page. */
export type Question =
  | { readonly kind: 'ask'; readonly wants: readonly Want[]; readonly isPowersOnly: boolean }
  | { readonly kind: 'fewer-heads'; readonly lack: Lack }
  | { readonly kind: 'white-behind' }
  | { readonly kind: 'spill-cures' }
  | { readonly kind: 'match-colour'; readonly areaId: AreaId; readonly target: ColourTarget; readonly lightId?: string }
  | { readonly kind: 'what-matters' }
  | { readonly kind: 'explain'; readonly before: Plan }
  | { readonly kind: 'stand-ins' }

export type QuestionKind = Question['kind']

/** A question with the look it is about. The newest order of a slot makes older ones worthless. */
export type AskOrder<Kind extends QuestionKind = QuestionKind> = Extract<Question, { readonly kind: Kind }> & {
  readonly slot: string
  readonly plan: Plan
  readonly lookId: string
  /** Worked on even while a hand is on the page; all others wait until it rests. */
  readonly isUnderHand?: boolean
}

/** Predictions stay in the worker: the page makes its own of what it shows. */
export type WayFound = Omit<Way, 'prediction'>
export type AnswerFound = Omit<Answer, 'ways'> & { readonly ways: readonly WayFound[] }
export type LookFound = Omit<LookLeft, 'prediction'>
export interface LooksFound {
  readonly best: LookFound | null
  readonly others: readonly LookFound[]
}

/** What an edit did to a look, in one line; null when nothing was changed that light or lens knows of. */
export interface Explained {
  readonly line: string | null
}

/** What each kind of question is answered with. */
export interface AnswerTo {
  'ask': AnswerFound
  'fewer-heads': LooksFound
  'white-behind': WhiteBehind
  /** One of each spill that is not quiet. */
  'spill-cures': readonly SpillCures[]
  'match-colour': ColourMatch
  'what-matters': readonly ThingDrifts[]
  'explain': Explained
  'stand-ins': StandInLines
}

export type ToWorker =
  | { readonly do: 'take'; readonly number: number; readonly order: AskOrder }
  /** Nobody waits for it any more. */
  | { readonly do: 'forget'; readonly slot: string }
  /** The answer as far as it has come. */
  | { readonly do: 'stop'; readonly slot: string }
  /** A hand is on the page, or has let go. */
  | { readonly do: 'hand'; readonly isOnPage: boolean }

/** With the number of the order it answers. */
export type FromWorker = { readonly number: number } & (
  | { readonly is: 'progress'; readonly share: number; readonly soFar: AnswerTo[QuestionKind] | null }
  | { readonly is: 'answer'; readonly answer: AnswerTo[QuestionKind] }
  | { readonly is: 'trouble'; readonly words: string }
)
