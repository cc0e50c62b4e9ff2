import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Person, Sees, Selection } from './board.ts'

/** What this person lets the others see. Identity is not in it: the relay stamps that. */
export interface OwnPresence {
  readonly pointer: { readonly xMetres: number; readonly yMetres: number } | null
  readonly selection: Selection | null
  readonly inHand: PlanEdit | null
  readonly lookId: string | null
  readonly sees: Sees
}

/** The others on the job, as the board needs them. */
export interface Company {
  people(): readonly Person[]
  /** Says what this person has in hand; may be called on every pointer move. */
  tell(presence: OwnPresence): void
  handPenTo(seatId: string): void
  takePenBack(): void
  onChange(listener: () => void): () => void
  /** Names behind client ids of the shared document, of those who are here; left out where nobody else can be. */
  namesBehind?(clientIds: readonly number[]): readonly string[]
  /** Their seats, likewise. */
  seatsBehind?(clientIds: readonly number[]): readonly string[]
}

/** Nobody else: the board on its own, before joining or in a test. */
export const noCompany: Company = {
  people: () => [],
  tell: () => undefined,
  handPenTo: () => undefined,
  takePenBack: () => undefined,
  onChange: () => () => undefined,
}
