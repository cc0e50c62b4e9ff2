import { add, direction, dot, scale, subtract, type Vector } from '../../arithmetic/vector.ts'
import { vectorOf } from '../../set/emitter.ts'
import type { Snag } from '../snag.ts'
import type { Check } from './check.ts'

/** One or two lights in the eyes, one of them in the upper half (common practice, no source). */
const MOST_CATCHLIGHTS = 2
/** From the tip of the nose to between the eyes: up, and back (from memory, about 4 and 3 cm on an adult). */
const EYES_ABOVE_NOSE_METRES = 0.04
const EYES_BEHIND_NOSE_METRES = 0.03

/**
 * What is mirrored in the eyes of somebody who looks at the lens. The cornea is a ball that faces the lens, so it shows
 * what lies within a right angle of it: there the mirror's slope is 45°, about where the cornea ends (from memory: 11.7
 * mm across at a radius of 7.8 mm, which is 49°). A light that does not reach the nose does not reach the eyes.
 */
export const catchlights: Check = ({ look, measured: { areas, lights } }) => {
  const nose = areas.find(({ id }) => id === 'nose')
  if (!nose?.inFrame || lights.every(({ on }) => !on)) return []
  const eyes: Vector = add(add(nose.place, scale(nose.facing, -EYES_BEHIND_NOSE_METRES)), [0, 0, EYES_ABOVE_NOSE_METRES])
  const toLens = direction(subtract(vectorOf(look.camera.place), eyes))
  const mirrored = lights.flatMap((light) => {
    const setup = look.lights[light.id]
    const arrives = nose.byLight.some(({ lightId, stops }) => lightId === light.id && stops !== null)
    if (!setup || !light.on || !arrives) return []
    const toLight = direction(subtract(vectorOf(setup.place), eyes))
    const facesEyes = dot(subtract(vectorOf(setup.aim), vectorOf(setup.place)), toLight) < 0
    return dot(toLight, toLens) > 0 && facesEyes ? [{ light, isUpper: toLight[2] > toLens[2] }] : []
  })
  const letters = mirrored.map(({ light }) => light.letter).join(', ')
  const snag = { rule: 'catchlights', severity: 'note', threshold: MOST_CATCHLIGHTS, unit: 'in the eyes' } as const
  if (mirrored.length === 0) {
    return [{
      ...snag,
      key: 'catchlights:none',
      message: 'Nothing is mirrored in the eyes: they look flat',
      action: 'Bring a light or a white board to the front, above the lens',
      value: 0,
      threshold: 1,
      about: ['nose'],
    } satisfies Snag]
  }
  if (mirrored.length > MOST_CATCHLIGHTS) {
    return [{
      ...snag,
      key: 'catchlights:many',
      message: `${mirrored.length} lights are mirrored in the eyes: ${letters}`,
      action: 'Move one further to the side than the lens can see in the eyes, or retouch it',
      value: mirrored.length,
      about: mirrored.map(({ light }) => light.id),
    } satisfies Snag]
  }
  if (mirrored.some(({ isUpper }) => isUpper)) return []
  return [{
    ...snag,
    key: 'catchlights:low',
    message: `${letters} ${mirrored.length === 1 ? 'is' : 'are'} mirrored in the lower half of the eyes`,
    action: 'Raise a light above the lens',
    value: 0,
    threshold: 1,
    unit: 'in the upper half',
    about: mirrored.map(({ light }) => light.id),
  } satisfies Snag]
}
