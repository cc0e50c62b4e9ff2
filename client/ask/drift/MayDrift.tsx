import { driftWords, type ThingDrifts } from '../../../shared-core/ask/whatMatters.ts'
import { useBoard } from '../../session/useBoard.ts'
import '../answers.css'
import { useLookAnswer } from '../useLookAnswer.ts'
import './drift.css'

interface MayDriftProps {
  readonly thing: ThingDrifts['thing']
  /** Of the light or piece; null for camera and subject. */
  readonly id: string | null
}

/** How far each measure of a thing may drift before the picture shows it, the most delicate first, with what shows it. */
export function MayDrift({ thing, id }: MayDriftProps) {
  const units = useBoard((board) => board.units)
  const { answer, share, trouble, isOld } = useLookAnswer('what-matters')
  const found = answer?.find((each) => each.thing === thing && each.id === id)
  if (!found) {
    const isAwaited = trouble === '' && (share !== null || isOld)
    return <p className="drift-waiting" role="status">{trouble || (isAwaited ? 'May drift: being worked out…' : '')}</p>
  }
  return (
    <section className="drift" data-old={isOld} aria-label="What matters">
      <h3 className="drift-title">May drift by</h3>
      <ul className="drift-measures">
        {found.drifts.map((drift, i) => {
          const tighter = drift.less.amount <= drift.more.amount ? drift.less : drift.more
          return (
            <li key={drift.measure} data-first={i === 0}>
              <span>{driftWords(drift, units)}</span>
              {i < 2 && tighter.first && <span className="drift-first">{tighter.first.label} {tighter.first.by === 'colour' ? 'changes colour' : 'moves'} first</span>}
            </li>
          )
        })}
      </ul>
    </section>
  )
}
