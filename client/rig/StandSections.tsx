import type { ReactNode } from 'react'
import type { Caution, CautionKind } from '../../shared-core/predict/caution.ts'
import type { Taped } from '../../shared-core/stands/marks.ts'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { useBoard } from '../session/useBoard.ts'

/** One step of building a stand, with the care that belongs to it. */
export function StandStep({ title, children, cautions = [], kinds = [] }: {
  readonly title: string
  readonly children: ReactNode
  readonly cautions?: readonly Caution[]
  /** Of the stand's cautions, those told here. */
  readonly kinds?: readonly CautionKind[]
}) {
  const told = cautions.filter(({ kind }) => kinds.includes(kind))
  return (
    <section className="rig-step" aria-label={title}>
      <h3 className="rig-step-title">{title}</h3>
      {children}
      {told.map(({ key, message }) => (
        <p key={key} className="rig-caution"><strong>Care:</strong> {message}</p>
      ))}
    </section>
  )
}

/** A number as it is read at arm's length, and what it is. */
export function BigNumber({ value, words }: { readonly value: string; readonly words: ReactNode }) {
  return (
    <p className="rig-number">
      <span className="rig-number-value">{value}</span>
      <span className="rig-number-words">{words}</span>
    </p>
  )
}

/** Where a stand's plumb falls: two tapes, and the side. */
export function TapeNumbers({ taped, what }: { readonly taped: Taped; readonly what: string }) {
  const units = useBoard((board) => board.units)
  return (
    <>
      {taped.from.map(({ mark, floorMetres }) => (
        <BigNumber key={mark.id} value={formatLength(floorMetres, units)} words={<>along the floor from <b>{mark.words}</b></>} />
      ))}
      <p className="rig-words">
        To below {what}{taped.side === null ? ', on the line between both marks' : `, ${taped.side}`}.
      </p>
    </>
  )
}
