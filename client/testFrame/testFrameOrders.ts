import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { PicturePoint } from '../../shared-core/testFrame/align.ts'
import type { TestFrameVerdict } from '../../shared-core/testFrame/judge.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'

export type ThreePoints = readonly [PicturePoint, PicturePoint, PicturePoint]

export type ToTestFrameWorker =
  /** Draw this look and try every slip of it. */
  | { readonly do: 'look'; readonly number: number; readonly plan: Plan; readonly lookId: string; readonly width: number; readonly height: number }
  /** Hold a photograph against the look that was last asked for. */
  | { readonly do: 'judge'; readonly number: number; readonly photo: Bytes; readonly points: ThreePoints }

export type FromTestFrameWorker = { readonly number: number } & (
  | { readonly is: 'predicted'; readonly picture: Bytes }
  | { readonly is: 'progress'; readonly tried: number }
  | { readonly is: 'ready' }
  | { readonly is: 'judged'; readonly verdict: TestFrameVerdict }
  | { readonly is: 'trouble'; readonly words: string }
)
