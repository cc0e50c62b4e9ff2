import type { Units } from '../../shared-core/plan/entry/length.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import type { Trigger } from '../../shared-core/rig/triggers.ts'
import type { FormatId, PrintedPicture } from './paper.ts'

/** All that goes on paper, gathered before a line is drawn: the same job makes the same pages. */
export interface PrintJob {
  readonly format: FormatId
  readonly units: Units
  readonly jobId: string
  readonly jobTitle: string
  /** Where a scan mark leads: "https://set.example:4200" */
  readonly origin: string
  /** "25 Nov 2026, 22:13 by Ines" */
  readonly printedWords: string
  readonly looks: readonly PrintedLook[]
}

export interface PrintedLook {
  readonly plan: Plan
  readonly lookId: string
  readonly look: Look
  readonly prediction: Prediction
  readonly state: PrintedState
  /** Null where no picture could be drawn. */
  readonly frame: PrintedPicture | null
  /** By light. */
  readonly singles: Readonly<Record<string, PrintedPicture>>
  /** By letter. */
  readonly triggers: Readonly<Record<string, Trigger>>
  /** What must be exact, by light: "height ±3 cm, distance ±5 cm". */
  readonly matters: Readonly<Record<string, readonly string[]>>
}

/** What the paper is a print of. */
export interface PrintedState {
  /** Null for a draft. */
  readonly lockNumber: number | null
  /** SHA-256 of the printed plan; empty where it is not known. */
  readonly planHash: string
  /** One line each: who locked, who said yes, conditions; of a draft, what it is a draft after. */
  readonly words: readonly string[]
}
