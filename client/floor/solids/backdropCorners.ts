import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Backdrop } from '../../../shared-core/plan/schema/look.ts'
import { panelCorners } from '../../../shared-core/set/panels.ts'
import { paperPanel } from '../../../shared-core/set/room.ts'

/** The paper's corners from its foot at camera left round to its top; none without paper. */
export function backdropCorners(backdrop: Backdrop): readonly Vector[] {
  const paper = paperPanel(backdrop)
  return paper === null ? [] : panelCorners(paper)
}
