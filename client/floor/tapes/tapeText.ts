import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { LightPrediction } from '../../../shared-core/predict/prediction.ts'
import type { ThingKey } from '../things.ts'

/** What stands on a tape or label, and what is read out for it. */
export interface TapeText {
  /** Big, as on tape; empty for things without a letter. */
  readonly letter: string
  readonly lines: readonly string[]
  readonly spoken: string
}

/** Writes a length for one person: "1.14 m", or in feet. */
export type LengthText = (metres: number) => string

/**
 * A light's tape: letter, distance to the place it serves, height of the front, power as its head's panel writes it.
 * A short one, for small panels, leaves the power out.
 */
export function lightTape(
  light: Look['lights'][string], prediction: LightPrediction | undefined, length: LengthText, short = false,
): TapeText {
  const distance = prediction === undefined ? '' : length(prediction.distanceMetres)
  const height = length(light.place.zMetres)
  const power = light.on ? powerWords(prediction) : 'off'
  const lines = short ? [light.on ? distance : 'off', `up ${height}`] : [[distance, `up ${height}`].filter((part) => part !== '').join(' · '), power]
  const spoken = [
    `Light ${light.letter}`,
    prediction?.summary ?? '',
    prediction === undefined ? '' : `${length(prediction.distanceMetres)} from front to place`,
    `${height} up`,
    light.on ? `power ${power}` : 'switched off',
  ]
  return { letter: light.letter, lines, spoken: spoken.filter((part) => part !== '').join(', ') }
}

/** As the panel writes it, with the energy beside it, since "−2.5" alone could be a level. */
function powerWords(prediction: LightPrediction | undefined): string {
  if (prediction === undefined) return ''
  const energy = energyBeside(prediction)
  return energy === null ? prediction.powerText : `${prediction.powerText} · ${energy}`
}

/** "21 Ws", to stand beside what a panel writes; null where the panel writes energy itself. */
export function energyBeside({ powerText, energyJoules }: LightPrediction): string | null {
  if (/Ws|J/.test(powerText)) return null
  return `${energyJoules < 10 ? energyJoules.toFixed(1) : Math.round(energyJoules)} Ws`
}

/** The most of a label that is drawn; the rest is read out. */
const LABEL_CHARACTERS = 22

/** Up to its last comma that fits, as a whole name reads better than a cut one; else cut. */
function shortened(label: string): string {
  const comma = label.lastIndexOf(',', LABEL_CHARACTERS)
  if (label.length > LABEL_CHARACTERS && comma > 0) return label.slice(0, comma)
  return label.length > LABEL_CHARACTERS ? `${label.slice(0, LABEL_CHARACTERS - 1).trimEnd()}…` : label
}

/** The label of anything that is not a light. */
export function labelOf(key: ThingKey, look: Look, place: Vector, length: LengthText): TapeText {
  switch (key.kind) {
    case 'piece': {
      const piece = look.pieces[key.id]
      const name = piece?.label ?? ''
      return { letter: '', lines: [shortened(name)], spoken: `${name}, ${length(place[2])} up` }
    }
    case 'point': {
      const name = look.points[key.id]?.label ?? ''
      return { letter: '', lines: [`${shortened(name)} · up ${length(place[2])}`], spoken: `Point ${name}, ${length(place[2])} up` }
    }
    case 'camera': {
      const { camera } = look
      const words = `${camera.focalLengthMillimetres} mm · up ${length(camera.place.zMetres)}`
      return { letter: '', lines: [words], spoken: `Camera, ${camera.focalLengthMillimetres} millimetres, ${length(camera.place.zMetres)} up` }
    }
    case 'subject':
      return { letter: '', lines: [look.subject.name || 'Subject'], spoken: `Subject ${look.subject.name}` }
    case 'backdrop': {
      const words = `Paper ${length(look.backdrop.widthMetres)}`
      return { letter: '', lines: [words], spoken: `${words} wide, ${length(look.backdrop.yMetres)} behind the T` }
    }
    case 'light':
      return { letter: look.lights[key.id]?.letter ?? '', lines: [], spoken: '' }
  }
}
