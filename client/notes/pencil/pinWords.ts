import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Pin } from '../../../shared-core/notes/pin.ts'
import type { Units } from '../../session/board.ts'

/** What the words for a pin are taken from. */
export interface PinnedIn {
  readonly plan: Pick<Plan, 'gels'>
  readonly look: Look | undefined
  readonly areas: readonly { readonly id: string; readonly label: string }[]
  readonly units: Units
}

/** Where a note hangs, as one says it: "camera-left cheek", "light B", "the Floor, 0.40 m left, 1.20 m behind". */
export function pinWords(pin: Pin, { plan, look, areas, units }: PinnedIn): string {
  const areaLabel = (id: string | null): string | undefined => areas.find((area) => area.id === id)?.label
  const lightWords = (id: string): string => {
    const letter = look?.lights[id]?.letter
    return letter === undefined ? 'a light that is gone' : `light ${letter}`
  }
  switch (pin.on) {
    case 'subject': return areaLabel(pin.areaId) ?? 'the subject'
    case 'light': return lightWords(pin.lightId)
    case 'piece': return look?.pieces[pin.pieceId] === undefined ? 'a piece that is gone' : look.pieces[pin.pieceId]!.kind
    case 'gel': {
      const gel = plan.gels[pin.gelId]?.name ?? 'a gel that is gone'
      return pin.lightId === null ? gel : `${gel} on ${lightWords(pin.lightId)}`
    }
    case 'colour': return `the colour of ${areaLabel(pin.areaId) ?? 'an area that is gone'}`
    case 'floor': return `the Floor, ${floorWords(pin.xMetres, pin.yMetres, units)}`
    case 'frame': return 'the background'
    case 'look': return 'the whole look'
  }
}

/** From the subject's T, as the camera sees it. */
function floorWords(xMetres: number, yMetres: number, units: Units): string {
  const side = `${formatLength(Math.abs(xMetres), units)} ${xMetres < 0 ? 'left' : 'right'}`
  return `${side}, ${formatLength(Math.abs(yMetres), units)} ${yMetres < 0 ? 'in front' : 'behind'}`
}
