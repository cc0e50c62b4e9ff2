import type { Caution } from '../caution.ts'
import { distance } from '../../arithmetic/vector.ts'
import { vectorOf } from '../../set/emitter.ts'
import type { CheckView } from './check.ts'
import { NEAR_FACE_METRES } from './nearFace.ts'

/** Above this a stand wants a sandbag (common practice, no source); the stand's own manual rules. */
const TALL_STAND_METRES = 2
const LARGE_FRONT_SQUARE_METRES = 1

const DEFERS = 'The equipment’s manual, the studio’s rules and local code come first.'

/**
 * The usual care for what stands in this look, each told at the piece it belongs to. These are reminders of common
 * practice, not a judgement that anything is safe.
 */
export function cautionsOf({ plan, look, measured }: CheckView): Caution[] {
  const cautions: Caution[] = []
  const nose = measured.areas.find((area) => area.id === 'nose')
  const lit = Object.entries(look.lights)

  for (const [id, light] of lit) {
    const head = plan.heads[light.headId]
    const modifier = plan.modifiers[light.modifierId]
    const top = light.place.zMetres + (modifier?.heightMetres ?? 0) / 2
    if (light.support === 'boom') {
      cautions.push({
        key: `boom:${id}`,
        kind: 'boom',
        message: `${light.letter} hangs from a boom: counterweight, safety cable, sandbag on the base, two people to raise or lower it, nobody underneath meanwhile. Rigging over people is for those trained to do it. ${DEFERS}`,
        about: [id],
      })
    } else if (top > TALL_STAND_METRES) {
      cautions.push({
        key: `tall-stand:${id}`,
        kind: 'tall-stand',
        message: `${light.letter} stands tall: longest leg under the load, sandbag on that leg, legs spread wide, within the stand’s rated load. ${DEFERS}`,
        about: [id],
      })
    }
    if (light.gelIds.length > 0 && head?.modellingLamp === 'halogen') {
      cautions.push({
        key: `hot-gel:${id}`,
        kind: 'hot-gel',
        message: `${light.letter} has a gel and a halogen lamp: lamp off or LED, air between gel and glass, look at it often, let the head cool before touching it. ${DEFERS}`,
        about: [id],
      })
    }
    if (modifier && modifier.widthMetres * modifier.heightMetres >= LARGE_FRONT_SQUARE_METRES) {
      cautions.push({
        key: `large-modifier:${id}`,
        kind: 'large-modifier',
        message: `${light.letter} is large: it catches moving air and doors; keep it clear of sprinklers, lamps and walkways, and weigh the stand down. ${DEFERS}`,
        about: [id],
      })
    }
    if (nose && distance(vectorOf(light.place), nose.place) < NEAR_FACE_METRES) {
      cautions.push({
        key: `flash-near-eyes:${id}`,
        kind: 'flash-near-eyes',
        message: `${light.letter} is close to the face: say “firing” before every test, never into open eyes at high power, and ask about recent eye surgery or sensitivity first. ${DEFERS}`,
        about: [id],
      })
    }
  }

  if (lit.length > 0) {
    const mains = lit.filter(([, light]) => plan.heads[light.headId]?.supply === 'mains').map(([id]) => id)
    if (mains.length > 0) {
      cautions.push({
        key: 'circuit:room',
        kind: 'circuit',
        message: 'Spread the heads over the circuits, keep each within 80 % of its breaker, uncoil drums fully, dryers and steamers elsewhere, cables along walls and taped at crossings. A licensed electrician decides what the building can carry.',
        about: mains,
      })
    }
    cautions.push({
      key: 'capacitor:heads',
      kind: 'capacitor',
      message: 'Flash heads hold a dangerous charge after they are unplugged: never open one, discharge and switch off before changing tubes or heads, damaged glass out of use. Service is for qualified people.',
      about: lit.map(([id]) => id),
    })
    cautions.push({
      key: 'photosensitive:people',
      kind: 'photosensitive',
      message: 'Ask everybody on the call sheet beforehand about photosensitive epilepsy and migraine; single slow flashes are rarely the trigger, bursts are. Say at the studio door that flash is in use.',
      about: [],
    })
  }
  return cautions
}
