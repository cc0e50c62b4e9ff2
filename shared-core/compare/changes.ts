import { changeWords } from '../ask/changeWords.ts'
import { applyEdit, type Json, type PlanChange, type PlanEdit, type PlanPath } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { kitChanges } from './kitChanges.ts'
import { asLook, withKitOf } from './sameLook.ts'
import { quietWords } from './quietWords.ts'

/** One difference between two looks, as people name them: a light moved, a gel, a sandbag. */
export interface LookChange {
  /** What differs, by what it belongs to: "lights/a/place". Unique among the changes of one comparison. */
  readonly key: string
  /** "C power +0.7", "B sandbag on" */
  readonly words: string
  /** Makes this difference, and no other, in the plan before. */
  readonly make: PlanEdit
  /** Takes it back, and nothing else, in the plan after. */
  readonly takeBack: PlanEdit
}

/** Two looks as two states of one, with every single difference between them. */
export interface LookComparison {
  readonly lookId: string
  readonly before: Plan
  readonly after: Plan
  readonly changes: readonly LookChange[]
}

/** What is told in one breath: leaves of one thing that change together when a hand does one thing. */
const TOGETHER: readonly (readonly [pattern: RegExp, as: string])[] = [
  [/^(lights\/[^/]+)\/(place|aim|rollDegrees)$/, '$1/place'],
  [/^(lights\/[^/]+)\/(energyJoules|on)$/, '$1/power'],
  [/^(lights\/[^/]+)\/(gelIds|gelPlace)$/, '$1/gel'],
  [/^(lights\/[^/]+)\/(modifierId|grid)$/, '$1/modifier'],
  [/^(pieces\/[^/]+)\/(place|facingDegrees|tiltDegrees|openDegrees)$/, '$1/place'],
  [/^(pieces\/[^/]+)\/(kind|widthMetres|heightMetres|front|back|transmittance)$/, '$1/made'],
  [/^(points\/[^/]+)\/.+$/, '$1'],
  [/^camera\/(place|aim)$/, 'camera/place'],
  [/^camera\/sensor(Width|Height)Millimetres$/, 'camera/sensor'],
  [/^subject\/(xMetres|yMetres)$/, 'subject/place'],
  [/^subject\/(turnDegrees|headTurnDegrees|headTiltDegrees|posture)$/, 'subject/pose'],
  [/^subject\/skin(ItaDegrees|Undertone)$/, 'subject/skin'],
  [/^backdrop\/(yMetres|centreXMetres|widthMetres|topMetres)$/, 'backdrop/place'],
  [/^(meter)\/.+$/, '$1'],
  [/^(mustReadTrue|accepted)\/.+$/, '$1'],
  [/^room\/(widthMetres|lengthMetres|heightMetres|markFrom\w+Metres)$/, 'room/size'],
  [/^room\/(surfaces|columns|circuits)\/.+$/, 'room/$1'],
  [/^room\/ambient(Lux|Kelvin)$/, 'room/ambient'],
  [/^((?:heads|modifiers|gels)\/[^/]+)\/.+$/, '$1'],
  [/^(team)\/.+$/, '$1'],
]

/** What is set to a value, of which both are told: "f/8 to f/11". */
const SETTINGS = /^(camera\/(fNumber|isoSpeed|shutterSeconds|whiteBalanceKelvin|focalLengthMillimetres)|finish\/.+)$/

/** Branches below which differences are looked for; all else is a leaf, and told whole. */
const DEEP = /^(room|room\/(surfaces|columns|circuits)|heads|modifiers|gels|team|lights|pieces|points|camera|subject|backdrop|finish|meter|mustReadTrue|accepted|(lights|pieces|points|heads|modifiers|gels)\/[^/]+)$/
/** What belongs to the job and not to any one look; the other looks are none of this one's business. */
const OF_THE_JOB = ['title', 'brief', 'team', 'room', 'heads', 'modifiers', 'gels'] as const

/**
 * Every difference between a look then and a look now (or another look), each able to be made or taken back by itself.
 * Lights and pieces of two different looks are held for the same by letter and label.
 * @throws RangeError when a plan has no such look
 */
export function compareLooks(planBefore: Plan, lookBefore: string, planAfter: Plan, lookAfter: string): LookComparison {
  const lookId = lookBefore
  const after = withKitOf(asLook(planAfter, lookAfter, planBefore, lookBefore), planBefore)
  const before = withKitOf(planBefore, after)
  const leaves = [
    ...differences(before.looks[lookId]!, after.looks[lookId]!, '', ['looks', lookId]),
    ...OF_THE_JOB.flatMap((key) => differences(before[key] as Json, after[key] as Json, key, [key])),
  ]
  const pathsByKey = new Map<string, PlanPath[]>()
  for (const { name, path } of leaves) pathsByKey.set(groupOf(name), [...(pathsByKey.get(groupOf(name)) ?? []), path])
  const changes = [...pathsByKey].map(([key, paths]): LookChange => {
    const make = takeOver(paths, after)
    const made = applyEdit(before, make)
    const words = changeWords(before, made, lookId).join(', ')
    const told = SETTINGS.test(key) ? fromTo(changeWords(made, before, lookId).join(', '), words) : words
    return { key, words: told || quietWords(key, before, after, lookId), make, takeBack: takeOver(paths, before) }
  })
  return { lookId, before, after, changes: [...changes, ...kitChanges(planBefore, { ...planAfter, looks: after.looks }, lookId)] }
}

/** "ISO 100 to 200": what both begin with is said once. */
function fromTo(from: string, to: string): string {
  if (from === '' || to === '') return to
  const [were, are] = [from.split(' '), to.split(' ')]
  const same = are.findIndex((word, index) => word !== were[index])
  return `${from} to ${are.slice(Math.max(0, same)).join(' ')}`
}

interface Difference {
  /** Below look or job: "lights/a/place". */
  readonly name: string
  readonly path: PlanPath
}

function differences(before: unknown, after: unknown, name: string, path: PlanPath): Difference[] {
  if (before === after || JSON.stringify(before) === JSON.stringify(after)) return []
  const isDeep = (name === '' || DEEP.test(name)) && isRecord(before) && isRecord(after)
  if (!isDeep) return [{ name, path }]
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])]
  return keys.flatMap((key) => differences(before[key], after[key], name === '' ? key : `${name}/${key}`, [...path, key]))
}

function groupOf(name: string): string {
  const found = TOGETHER.find(([pattern]) => pattern.test(name))
  return found === undefined ? name : name.replace(found[0], found[1])
}

/** Puts at these places what stands there in `from`. */
function takeOver(paths: readonly PlanPath[], from: Plan): PlanEdit {
  const changes = paths.map((path): PlanChange => {
    const value = path.reduce<unknown>((branch, key) => (isRecord(branch) ? branch[key] : undefined), from)
    return value === undefined ? { path, remove: true } : { path, set: value as Json }
  })
  return { name: 'takeOver', changes }
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
