import { driftWords } from '../../../shared-core/ask/whatMatters.ts'
import { useBoard } from '../../session/useBoard.ts'
import { useLookAnswer } from '../useLookAnswer.ts'

/** A light's or piece's two most delicate measures, short as on its tape; nothing until they are worked out. */
export function DriftOnTape({ id }: { readonly id: string }) {
  const units = useBoard((board) => board.units)
  const { answer, isOld } = useLookAnswer('what-matters')
  const found = isOld ? undefined : answer?.find((each) => each.id === id)
  if (!found) return null
  return <> · {found.drifts.slice(0, 2).map((drift) => driftWords(drift, units)).join(', ')}</>
}
