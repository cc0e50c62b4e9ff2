import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { PictureView } from '../../shared-core/picture/views.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'

export type Role = 'photographer' | 'assistant' | 'client'
export type Units = 'metric' | 'imperial'

/** What a hand or the keyboard is on. */
export type Selection =
  | { readonly kind: 'light' | 'piece' | 'point' | 'area'; readonly id: string }
  | { readonly kind: 'camera' | 'subject' | 'backdrop' | 'room' | 'kit' }

/** How a person looks at the look on their board: what whoever looks with them sees too. */
export interface Sees {
  readonly view: PictureView
  readonly soloLightId: string | null
  readonly before: boolean
  /** Whether they keep a Before of their own choice; else it is the plan before their last change. */
  readonly beforeKept: boolean
  /** A whole page that they have open over the board. */
  readonly page: SharedPage | null
  /** What was kept and they look at instead of the shared plan. */
  readonly reopened: KeptThing | null
  /** Where they point in the Frame, as shares from its left and top: the same place of the picture at every size. */
  readonly pointer: { readonly frameX: number; readonly frameY: number } | null
  /** Seat of the person they look with. */
  readonly with: string | null
}

/** Pages on which people come to agree, and which one may open because another has. */
export const SHARED_PAGES = ['proof-sheet', 'stand-ins', 'agreed', 'screen-check'] as const
export type SharedPage = (typeof SHARED_PAGES)[number]

/** A lock or a "that one", by its id among the notes. */
export interface KeptThing {
  readonly kind: 'lock' | 'that-one'
  readonly id: string
}

export const SEES_PLAINLY: Sees = { view: 'picture', soloLightId: null, before: false, beforeKept: false, page: null, reopened: null, pointer: null, with: null }

/** Another person on the job, as the relay stamps them. */
export interface Person {
  readonly seatId: string
  readonly name: string
  readonly role: Role
  readonly isSelf: boolean
  readonly hasPen: boolean
  /** Pointer on the Floor in metres of the set; null when elsewhere. */
  readonly pointer: { readonly xMetres: number; readonly yMetres: number } | null
  readonly selection: Selection | null
  /** An edit still in their hand, shown to us before it is done. */
  readonly inHand: PlanEdit | null
  readonly lookId: string | null
  readonly sees: Sees
}

/** The connection as the person should hear it. */
export interface ConnectionView {
  readonly state: 'joining' | 'live' | 'away' | 'refused' | 'closed'
  /** "Live", "Offline: your changes are kept here and will merge", "This link was withdrawn" */
  readonly words: string
  /** Set when the relay cannot keep edits (full disk), so that nobody trusts what is not stored. */
  readonly notKept: string | null
}

/** A plan as it was kept, to be looked at. */
export interface Reopened {
  readonly plan: Plan
  readonly lookId: string
  /** What it is, to follow "You are looking at": "lock 3", "the one Pell meant" */
  readonly words: string
  /** By which others find the same. */
  readonly kept: KeptThing
}

/** The plan before another's last change, or as they kept it. */
export interface BeforeOfAnother {
  readonly name: string
  readonly plan: Plan
}

/**
 * Everything the screen draws and everything it can do: an engine without React. Components select the few fields they
 * draw through `useBoard(selector)`; they never touch the shared document.
 */
export interface Board {
  /** The shared plan, or in its place the one reopened: then nothing can be changed. */
  readonly plan: Plan
  readonly lookId: string
  /** The plan with whatever is in anybody's hand laid over it: what to draw. Edits are made from `plan`. */
  readonly shown: Plan
  /** Of the plan with whatever is in anybody's hand. */
  readonly prediction: Prediction
  /** What was repaired or left out when the shared document was read, in words. */
  readonly repairs: readonly string[]
  readonly selection: Selection | null
  readonly role: Role
  readonly mayEdit: boolean
  /** Why not, when not: "Ines holds the pen". */
  readonly mayNotBecause: string | null
  readonly units: Units
  readonly people: readonly Person[]
  readonly connection: ConnectionView
  readonly canUndo: boolean
  readonly canRedo: boolean
  /** One line on what the last edit did, or why it was refused; announced to screen readers. */
  readonly lastWords: string
  /** Light seen alone while pressed; null for all. */
  readonly soloLightId: string | null
  /** The plan to compare with: as it was kept, or else as it was before this person's last change, or the others' where this person may only look; null before any. */
  readonly before: Plan | null
  readonly beforeKept: boolean
  /** The Frame shows `before` while this is held. */
  readonly seesBefore: boolean
  /** Whose Before `seesBefore` shows, where that is another's; null for one's own. */
  readonly beforeOfAnother: BeforeOfAnother | null
  /** What the Frame is looked at as. */
  readonly frameView: PictureView
  /** Seat of the person this one looks with; null for looking on one's own. */
  readonly looksWith: string | null
  /** What was kept and is looked at again instead of the shared plan, which goes on meanwhile; null for the shared plan. */
  readonly reopened: Reopened | null

  /** Writes the edit: one transaction, one undo step. Refused (with words) without the right to edit. */
  edit(edit: PlanEdit): void
  /** Shows the edit here and in others' boards while the hand is still on it; null lets go without writing. */
  hold(edit: PlanEdit | null): void
  undo(): void
  redo(): void
  select(selection: Selection | null): void
  showLook(lookId: string): void
  setUnits(units: Units): void
  point(place: { xMetres: number; yMetres: number } | null): void
  solo(lightId: string | null): void
  /** Keeps the plan as it is now to compare with, or goes back to comparing with one's last change. */
  keepBefore(kept: boolean): void
  seeBefore(sees: boolean): void
  /** Shows what another's Before shows. False where this page does not know it: it came after their last change. */
  seeBeforeOf(person: Pick<Person, 'seatId' | 'name'>): boolean
  /** Tells the others what page is open over the board. */
  tellPage(page: SharedPage | null): void
  lookAs(view: PictureView): void
  /** Where this person points in the Frame. */
  pointInFrame(place: Sees['pointer']): void
  /** View follows that person's from here on; null leaves. It never edits. */
  lookWith(seatId: string | null): void
  /** Shows a kept plan, read-only, until it is left (null) for the shared plan as it is by then. */
  reopen(kept: Reopened | null): void
  handPenTo(seatId: string): void
  takePenBack(): void
}
