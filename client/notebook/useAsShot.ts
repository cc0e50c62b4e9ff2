import { useMemo } from 'react'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { plannedNumbers, shotAsPlanned } from '../../shared-core/notebook/asShot.ts'
import { asShotKey, type AsShot, type StandNumbers } from '../../shared-core/rig/asShot.ts'
import type { RigEdit } from '../../shared-core/rig/rig.ts'
import { standsOf, type Stand } from '../../shared-core/stands/stand.ts'
import { useRig, useRigStore } from '../rig/useRig.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'

export interface AsShotNow {
  readonly stands: readonly Stand[]
  /** The look's taking aperture, which readings in stops are counted from. */
  readonly fNumber: number
  readonly entryOf: (standId: string) => AsShot | undefined
  /** Records one number or several; the rest as it was recorded, or as planned. */
  readonly record: (stand: Stand, shot: Partial<StandNumbers>) => void
  readonly forget: (standId: string) => void
  /** Whatever nobody has recorded yet, as planned. */
  readonly allAsPlanned: () => void
}

/** A look as it stood, stand by stand; null where the look is gone. */
export function useAsShot(lookId: string): AsShotNow | null {
  const plan = useBoard((board) => board.plan)
  const entries = useRig(({ rig }) => rig.asShot)
  const board = useBoardStore()
  const store = useRigStore()
  const predictor = useMemo(() => createPredictor(), [])
  const look = plan.looks[lookId]
  const stands = useMemo(() => (plan.looks[lookId] === undefined ? null : standsOf(plan, lookId, predictor(plan, lookId))), [plan, lookId, predictor])
  if (stands === null || look === undefined) return null
  const editOf = (stand: Stand, shot: Partial<StandNumbers>): RigEdit => {
    const { rig, writtenBy } = store.getState()
    const before = rig.asShot[asShotKey(lookId, stand.id)]
    return {
      kind: 'asShot', key: asShotKey(lookId, stand.id),
      entry: { lookId, standId: stand.id, by: writtenBy(), planned: plannedNumbers(stand), shot: { ...(before?.shot ?? shotAsPlanned(stand)), ...shot }, note: before?.note ?? '' },
    }
  }
  const write = (edits: readonly RigEdit[]): void => {
    if (!board.getState().mayEdit || edits.length === 0) return
    store.getState().write(edits)
  }
  return {
    stands,
    fNumber: look.camera.fNumber,
    entryOf: (standId) => entries[asShotKey(lookId, standId)],
    record: (stand, shot) => write([editOf(stand, shot)]),
    forget: (standId) => write([{ kind: 'asShot', key: asShotKey(lookId, standId), entry: null }]),
    allAsPlanned: () => write(stands.filter(({ id }) => entries[asShotKey(lookId, id)] === undefined).map((stand) => editOf(stand, {}))),
  }
}
