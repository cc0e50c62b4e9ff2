import { effectWords, type EffectVoice } from '../ask/effectWords.ts'
import type { Light, Look, Plane } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { seenHueWords } from '../predict/plainWords.ts'
import type { Prediction } from '../predict/prediction.ts'

/** From so many stops on it is said how much brighter or darker. Common practice, no source. */
const MUCH_STOPS = 1
const LITTLE_STOPS = 1 / 3

const PLAIN_VOICE: EffectVoice = {
  level: (stops) => {
    const word = stops > 0 ? 'brighter' : 'darker'
    const size = Math.abs(stops)
    return size >= MUCH_STOPS ? `much ${word}` : size < LITTLE_STOPS ? `a little ${word}` : word
  },
  hue: ({ colour }) => seenHueWords(colour.display),
  frame: (widthTimes) => (widthTimes < 1 ? 'the picture is tighter' : 'the picture is wider'),
}

/** What a change does to the picture, for people who do not read stops: "brighter on the nose"; no number in it. */
export function plainEffectWords(before: Prediction, after: Prediction): readonly string[] {
  return effectWords(before, after, PLAIN_VOICE)
}

const LIGHT_NAMES: Readonly<Record<Plane, string>> = {
  background: 'light on the background', edge: 'light on the edge', 'shadow-side': 'light on the shadow side', front: 'light from the front', product: 'light on the product',
}

/**
 * A change between two looks for people who know the picture and not the set: lights by what they are for, no letters,
 * no numbers.
 * @param key of a `LookChange`
 * @param before the look before, and `after` the look after, both under `lookId`
 */
export function plainChangeWords(key: string, before: Plan, after: Plan, lookId: string): string {
  const [was, is] = [before.looks[lookId]!, after.looks[lookId]!]
  const [thing = '', id = '', part] = key.split('/')
  switch (thing) {
    case 'lights': return lightWords(id, part, was, is)
    case 'pieces': return `a panel in the set ${cameOrWent(was.pieces[id], is.pieces[id]) ?? (part === 'label' ? 'is called otherwise' : 'is placed or made otherwise')}`
    case 'points': return 'a place that is measured'
    case 'camera': return cameraWords(id, was, is)
    case 'subject': return SUBJECT_WORDS[id] ?? 'the person'
    case 'backdrop': return BACKDROP_WORDS[id] ?? 'the background is another'
    case 'finish': return finishWords(id, was, is)
    case 'room': return id === 'ambient' ? 'the light that is in the room anyway' : 'the room'
    case 'heads': case 'modifiers': case 'gels': return 'something of the kit'
    default: return 'something that is written down'
  }
}

function lightWords(id: string, part: string | undefined, was: Look, is: Look): string {
  const [before, after] = [was.lights[id], is.lights[id]]
  const name = lightName((after ?? before)!, after === undefined ? was : is)
  if (before === undefined || after === undefined) return `${name} ${cameOrWent(before, after)!}`
  switch (part) {
    case 'power':
      if (before.on !== after.on) return `${name} is ${after.on ? 'on' : 'off'} now`
      return `${name} is ${after.energyJoules > before.energyJoules ? 'brighter' : 'dimmer'}`
    case 'place': return `${name} has moved`
    case 'gel': return `${name} ${after.gelIds.length === 0 ? 'has no colour any more' : before.gelIds.length === 0 ? 'has a colour now' : 'has another colour'}`
    case 'modifier': return `${name} is softened or shaped otherwise`
    case 'headId': return `${name} comes from another lamp`
    case 'sandbag': case 'safetyCable': case 'support': case 'circuitId': return `how the ${bare(name)} is held and fed`
    default: return `what is written of the ${bare(name)}`
  }
}

/** By what it is for; where several are for the same, one of them. */
function lightName({ plane }: Light, { lights }: Look): string {
  const isOneOfMany = Object.values(lights).filter((light) => light.plane === plane).length > 1
  const name = LIGHT_NAMES[plane]
  return isOneOfMany ? `one ${name}` : `the ${name}`
}

const bare = (name: string): string => name.replace(/^(the|one) /, '')

function cameOrWent(before: unknown, after: unknown): string | null {
  return before === undefined ? 'is new' : after === undefined ? 'is gone' : null
}

function cameraWords(part: string, { camera: was }: Look, { camera: is }: Look): string {
  switch (part) {
    case 'fNumber': return `the camera takes in ${is.fNumber < was.fNumber ? 'more' : 'less'} light`
    case 'isoSpeed': return `the camera is set ${is.isoSpeed > was.isoSpeed ? 'brighter' : 'darker'}`
    case 'whiteBalanceKelvin': return `the camera sees everything ${is.whiteBalanceKelvin > was.whiteBalanceKelvin ? 'warmer' : 'cooler'}`
    case 'focalLengthMillimetres': return `the camera looks ${is.focalLengthMillimetres > was.focalLengthMillimetres ? 'closer' : 'wider'}`
    case 'place': return 'the camera has moved'
    case 'sensor': return 'the picture has another shape'
    default: return 'the camera is set otherwise'
  }
}

const SUBJECT_WORDS: Readonly<Record<string, string>> = {
  place: 'the person stands elsewhere', pose: 'the person holds themselves otherwise', heightMetres: 'the person is of another height', skin: 'other skin',
  skinSheen: 'skin that shines otherwise', hair: 'other hair', lips: 'other lips', cloth: 'other clothes', name: 'the name of who is photographed',
}

const BACKDROP_WORDS: Readonly<Record<string, string>> = {
  place: 'the background hangs otherwise', swatch: 'the background is of another colour', intent: 'what is wanted of the background',
}

function finishWords(part: string, { finish: was }: Look, { finish: is }: Look): string {
  switch (part) {
    case 'exposureStops': return `the picture is finished ${is.exposureStops > was.exposureStops ? 'brighter' : 'darker'}`
    case 'contrast': return `the picture is finished with ${is.contrast > was.contrast ? 'more' : 'less'} contrast`
    default: return 'the picture is finished otherwise'
  }
}
