import type { Plan } from '../plan/schema/plan.ts'
import { standingInOrder } from '../stands/standOrder.ts'
import { TALL_STAND_METRES, TWO_PEOPLE_FRAME_METRES } from '../stands/moves/moveMinutes.ts'

/** One stand taken down. */
export interface StrikeLine {
  readonly standId: string
  readonly name: string
  readonly words: readonly string[]
  readonly cautions: readonly string[]
}

/** The stands of a look in the reverse of the order in which they were built, with the usual care at each. Common practice, no source. */
export function strikeList(plan: Plan, lookId: string): readonly StrikeLine[] {
  const look = plan.looks[lookId]
  if (look === undefined) throw new RangeError(`The plan has no look called ${lookId}`)
  return [...standingInOrder(look)].reverse().map((standing): StrikeLine => {
    if (standing.kind === 'piece') {
      const { label, kind, widthMetres, heightMetres } = standing.piece
      const isLarge = kind === 'scrim' && Math.max(widthMetres, heightMetres) >= TWO_PEOPLE_FRAME_METRES
      return { standId: standing.id, name: label, words: ['Down and to its case'], cautions: isLarge ? ['Two people: a frame this large catches air.'] : [] }
    }
    const { light } = standing
    const gels = light.gelIds.map((id) => plan.gels[id]?.name ?? id)
    const isHot = plan.heads[light.headId]?.modellingLamp === 'halogen'
    return {
      standId: standing.id, name: light.letter,
      words: [
        'Power down, unplug, discharge as its manual says',
        ...(gels.length > 0 ? [`${gels.join(' + ')} back to the sleeve, ${gels.length === 1 ? 'its' : 'their'} hours of use written on it`] : []),
        `${plan.modifiers[light.modifierId]?.name ?? 'modifier'} off, then the head`,
        'Protective cap on once it is cool, then pack',
      ],
      cautions: [
        isHot ? 'Hot: the lamp and the glass burn for minutes. Let it cool, gloves on.' : 'The tube is hot after fast firing: let it cool before it is packed.',
        'A cap on a hot head melts; a cap left on melts when it is next fired.',
        ...(light.support === 'boom' ? ['Two people lower the boom; nobody underneath; counterweight off last.'] : []),
        ...(light.support === 'stand' && light.place.zMetres > TALL_STAND_METRES ? ['Lower the stand before anything comes off it; the sandbag goes last.'] : []),
      ],
    }
  })
}
