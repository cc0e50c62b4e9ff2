import { formatFNumber } from '../plan/entry/aperture.ts'
import { formatIso, formatKelvin, formatShutter } from '../plan/entry/camera.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { Backdrop, Camera, Finish, Look, Subject } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { subtract, type Vector } from '../arithmetic/vector.ts'
import { vectorOf } from '../set/emitter.ts'
import { lightChangeWords, moveWords, pieceChangeWords, sideWords } from './lightChangeWords.ts'

/** About where a face is, for near and far. */
const FACE_SHARE_OF_HEIGHT = 0.9

/**
 * What was done between two plans that may change how one look is lit, seen or finished, each thing in a few words.
 * Words, wishes and order that no light knows of (notes, letters, wanted levels, the team) are not told.
 */
export function changeWords(planBefore: Plan, planAfter: Plan, lookId: string): readonly string[] {
  const before = planBefore.looks[lookId]
  const after = planAfter.looks[lookId]
  if (!before || !after) return []
  const subject: Vector = [before.subject.xMetres, before.subject.yMetres, before.subject.heightMetres * FACE_SHARE_OF_HEIGHT]
  return [
    ...recordWords(before.lights, after.lights, ({ letter }) => letter, (a, b) => lightChangeWords(a, b, planAfter, subject)),
    ...recordWords(before.pieces, after.pieces, ({ label }) => label, (a, b) => pieceChangeWords(a, b, subject)),
    ...recordWords(before.points, after.points, ({ label }) => label, (a, b) => (a === b || sameLeaves(a, b) ? [] : [`${b.label} moved`])),
    ...cameraWords(before.camera, after.camera),
    ...subjectWords(before.subject, after.subject),
    ...backdropWords(before.backdrop, after.backdrop),
    ...finishWords(before.finish, after.finish),
    ...(sameLeaves(before.meter, after.meter) ? [] : [`metered with the ${after.meter.receptor}`]),
    ...roomWords(planBefore, planAfter),
    ...kitWords(planBefore, planAfter, after),
  ]
}

function recordWords<Thing>(
  before: Readonly<Record<string, Thing>>, after: Readonly<Record<string, Thing>>, name: (thing: Thing) => string,
  changed: (before: Thing, after: Thing) => readonly string[],
): readonly string[] {
  const kept = Object.entries(after).flatMap(([id, thing]) => {
    const was = before[id]
    return was === undefined ? [`${name(thing)} added`] : was === thing ? [] : changed(was, thing)
  })
  const gone = Object.entries(before).flatMap(([id, thing]) => (after[id] === undefined ? [`${name(thing)} taken out`] : []))
  return [...kept, ...gone]
}

function cameraWords(before: Camera, after: Camera): string[] {
  const words: string[] = []
  if (before.fNumber !== after.fNumber) words.push(formatFNumber(after.fNumber))
  if (before.isoSpeed !== after.isoSpeed) words.push(formatIso(after.isoSpeed))
  if (before.shutterSeconds !== after.shutterSeconds) words.push(`${formatShutter(after.shutterSeconds)} s`.replace(' s s', ' s'))
  if (before.whiteBalanceKelvin !== after.whiteBalanceKelvin) words.push(`balanced for ${formatKelvin(after.whiteBalanceKelvin)}`)
  if (before.focalLengthMillimetres !== after.focalLengthMillimetres) words.push(`${after.focalLengthMillimetres} mm`)
  const moved = moveWords(vectorOf(before.place), vectorOf(after.place), vectorOf(before.aim))
  if (moved) words.push(`camera ${moved}`)
  else if (!sameLeaves(before.aim, after.aim)) words.push('camera turned')
  const others = ['sensorWidthMillimetres', 'sensorHeightMillimetres', 'headroomStops', 'veilingGlare'] as const
  if (others.some((key) => before[key] !== after[key])) words.push('another camera')
  return words
}

function subjectWords(before: Subject, after: Subject): string[] {
  const words: string[] = []
  const by: Vector = subtract([after.xMetres, after.yMetres, 0], [before.xMetres, before.yMetres, 0])
  if (Math.abs(by[0]) + Math.abs(by[1]) >= 0.005) words.push(`subject ${sideWords(by)}`)
  const turns = ['turnDegrees', 'headTurnDegrees', 'headTiltDegrees'] as const
  if (turns.some((key) => before[key] !== after[key])) words.push('subject turned')
  if (before.posture !== after.posture) words.push(`subject ${after.posture}`)
  if (before.heightMetres !== after.heightMetres) words.push(`subject ${after.heightMetres.toFixed(2)} m tall`)
  if (before.skinItaDegrees !== after.skinItaDegrees) words.push(`${after.skinItaDegrees < before.skinItaDegrees ? 'deeper' : 'fairer'} skin`)
  if (before.skinUndertone !== after.skinUndertone) words.push('another undertone')
  if (before.skinSheen !== after.skinSheen) words.push(after.skinSheen > before.skinSheen ? 'dewier skin' : 'more powder')
  for (const key of ['hair', 'lips', 'cloth'] as const) if (before[key] !== after[key]) words.push(`other ${key}`)
  return words
}

function backdropWords(before: Backdrop, after: Backdrop): string[] {
  const words: string[] = []
  if (before.kind !== after.kind) words.push(after.kind === 'paper' ? 'paper up' : 'paper down')
  const by = after.yMetres - before.yMetres
  if (Math.abs(by) >= 0.005) words.push(`paper ${Math.round(Math.abs(by) * 100)} cm ${by > 0 ? 'back' : 'nearer'}`)
  if (before.swatch !== after.swatch) words.push('other paper')
  const sizes = ['centreXMetres', 'widthMetres', 'topMetres'] as const
  if (sizes.some((key) => before[key] !== after[key])) words.push('paper of another cut')
  return words
}

function finishWords(before: Finish, after: Finish): string[] {
  const named = { exposureStops: 'exposure', contrast: 'contrast', whitePointStops: 'white point', blackPoint: 'black point' } as const
  return (Object.keys(named) as (keyof typeof named)[]).filter((key) => before[key] !== after[key])
    .map((key) => `finish: ${named[key]} ${formatStops(after[key], key === 'blackPoint' ? 2 : 1)}`)
}

function roomWords({ room: before }: Plan, { room: after }: Plan): string[] {
  const words: string[] = []
  if (before === after) return words
  if (before.ambientLux !== after.ambientLux) words.push(`house lights ${Math.round(after.ambientLux)} lux`)
  else if (before.ambientKelvin !== after.ambientKelvin) words.push('house lights of another colour')
  if (!sameLeaves(before.surfaces, after.surfaces)) words.push('other walls')
  const sizes = ['widthMetres', 'lengthMetres', 'heightMetres', 'markFromLeftWallMetres', 'markFromRearWallMetres'] as const
  if (sizes.some((key) => before[key] !== after[key]) || JSON.stringify(before.columns) !== JSON.stringify(after.columns)) words.push('another room')
  return words
}

/** What is on this look's lights and was changed in the kit itself. */
function kitWords(before: Plan, after: Plan, look: Look): string[] {
  const lights = Object.values(look.lights)
  const changed = (kind: 'heads' | 'modifiers' | 'gels', ids: readonly string[]) => [...new Set(ids)].flatMap((id) => {
    const [was, is] = [before[kind][id], after[kind][id]]
    return was && is && was !== is && !sameLeaves({ ...was, count: 0, sheets: 0, name: '' }, { ...is, count: 0, sheets: 0, name: '' })
      ? [`${is.name} changed`] : []
  })
  return [
    ...changed('heads', lights.map(({ headId }) => headId)),
    ...changed('modifiers', lights.map(({ modifierId }) => modifierId)),
    ...changed('gels', lights.flatMap(({ gelIds }) => gelIds)),
  ]
}

function sameLeaves(a: object, b: object): boolean {
  return JSON.stringify(a) === JSON.stringify(b)
}
