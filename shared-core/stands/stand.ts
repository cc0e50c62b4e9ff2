import type { Gel, Head, Modifier } from '../plan/schema/kit.ts'
import type { Light, Look, Piece } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Caution } from '../predict/caution.ts'
import type { LightPrediction, Prediction } from '../predict/prediction.ts'
import { gelCuts } from '../kit/gelCuts.ts'
import { aimedOf, type Aimed } from './aimed.ts'
import { marksOf, tapedFrom, type Taped } from './marks.ts'
import { standingInOrder } from './standOrder.ts'

/** What one stand of a look is to be built as: everything an assistant needs, in metres, joules and words. */
export type Stand = LightStand | PieceStand

export interface LightStand {
  readonly kind: 'light'
  readonly id: string
  /** The letter on its tape. */
  readonly name: string
  readonly light: Light
  readonly head: Head | null
  readonly modifier: Modifier | null
  readonly taped: Taped
  /** Centre of the front above the floor. */
  readonly heightMetres: number
  /** Centre of the front to the place that the light serves, in a straight line, and what that place is called. */
  readonly frontToMetres: number | null
  readonly frontTo: string
  readonly aimed: Aimed
  readonly gels: readonly GelOnStand[]
  /** What the prediction says of it: level at the place served, power as its panel writes it. Null when it cannot be lit. */
  readonly predicted: LightPrediction | null
  /** The circuit it is plugged into, as the room calls it; null while nobody has said. */
  readonly circuit: string | null
  readonly cautions: readonly Caution[]
}

export interface GelOnStand {
  readonly gel: Gel
  /** Of the cut, longer side first; null when none was found for it. */
  readonly longMillimetres: number | null
  readonly shortMillimetres: number | null
}

export interface PieceStand {
  readonly kind: 'piece'
  readonly id: string
  readonly name: string
  readonly piece: Piece
  /** To below its centre; of the hinge for a V-flat. */
  readonly taped: Taped
  readonly heightMetres: number
  readonly cautions: readonly Caution[]
}

/**
 * The stands of a look, in the order in which they are built.
 * @param prediction of that look of that plan
 * @throws RangeError when the plan has no such look
 */
export function standsOf(plan: Plan, lookId: string, prediction: Prediction): readonly Stand[] {
  const look = plan.looks[lookId]
  if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
  const marks = marksOf(plan, look)
  const cuts = gelCuts(plan, [lookId])
  return standingInOrder(look).map((standing): Stand => {
    const cautions = prediction.cautions.filter(({ about }) => about.includes(standing.id))
    if (standing.kind === 'piece') {
      const { id, piece } = standing
      const { xMetres, yMetres, zMetres } = piece.place
      return { kind: 'piece', id, name: piece.label, piece, taped: tapedFrom(marks, xMetres, yMetres), heightMetres: zMetres, cautions }
    }
    const { id, light } = standing
    const predicted = prediction.lights.find((one) => one.id === id) ?? null
    const cutOf = (gelId: string) => cuts.find((cut) => cut.gelId === gelId && cut.uses.some(({ lightId }) => lightId === id))
    return {
      kind: 'light', id, name: light.letter, light,
      head: plan.heads[light.headId] ?? null,
      modifier: plan.modifiers[light.modifierId] ?? null,
      taped: tapedFrom(marks, light.place.xMetres, light.place.yMetres),
      heightMetres: light.place.zMetres,
      frontToMetres: predicted?.distanceMetres ?? null,
      frontTo: areaWords(prediction, look, light),
      aimed: aimedOf(light, look),
      gels: light.gelIds.flatMap((gelId) => {
        const gel = plan.gels[gelId]
        const cut = cutOf(gelId)
        return gel ? [{ gel, longMillimetres: cut?.longMillimetres ?? null, shortMillimetres: cut?.shortMillimetres ?? null }] : []
      }),
      predicted,
      circuit: light.circuitId === '' ? null : (plan.room.circuits[light.circuitId]?.label ?? null),
      cautions,
    }
  })
}

function areaWords({ areas }: Prediction, { points }: Look, { serves }: Light): string {
  return areas.find(({ id }) => id === serves)?.label ?? points[serves]?.label ?? 'the place it serves'
}
