import { chooseHead } from '../../plan/edits/lights.ts'
import type { Check } from './check.ts'
import { mendBy } from './check.ts'

/** Clear lights whose colour differs by more show it on skin and paper (common practice, no source). */
const APART_KELVIN = 300

/** Heads of different makes, or very different powers, on lights without gel. */
export const headColour: Check = ({ plan, look, measured: { lights, lookId } }) => {
  const clear = lights.filter((light) => light.on && light.gel.clear)
  const key = clear.find((light) => light.plane === 'front') ?? clear[0]
  if (!key) return []
  return clear.flatMap((light) => {
    const apart = Math.abs(light.colourTemperatureKelvin - key.colourTemperatureKelvin)
    if (apart <= APART_KELVIN) return []
    const isOtherMake = look.lights[light.id]?.headId !== look.lights[key.id]?.headId
    const warmer = light.colourTemperatureKelvin < key.colourTemperatureKelvin
    return [{
      key: `head-colour:${light.id}`,
      rule: 'head-colour' as const,
      severity: 'look' as const,
      message: `${light.letter} is ${apart} K ${warmer ? 'warmer' : 'bluer'} than ${key.letter}, both without gel`,
      action: isOtherMake
        ? `Use the same head for ${light.letter} as for ${key.letter}, or a pale conversion sheet`
        : `Bring the powers of ${light.letter} and ${key.letter} nearer to each other, or use a pale conversion sheet`,
      value: apart,
      threshold: APART_KELVIN,
      unit: 'K',
      about: [light.id, key.id],
      ...(isOtherMake
        ? mendBy(`${light.letter} on ${key.letter}’s kind of head`, chooseHead(plan, lookId, light.id, look.lights[key.id]!.headId))
        : {}),
    }]
  })
}
