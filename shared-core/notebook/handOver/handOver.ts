import type { Units } from '../../plan/entry/length.ts'
import { writeJobFile } from '../../plan/read.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import type { Prediction } from '../../predict/prediction.ts'
import type { AsShot } from '../../rig/asShot.ts'
import { standsOf } from '../../stands/stand.ts'
import { planAsShot } from '../asShot.ts'
import { asShotText } from './asShotText.ts'
import { dayText, intentText } from './intent.ts'
import { photographsInWords, type HandedPhotograph } from './photographs.ts'
import { cleanPlatesText, recipeText } from './recipe.ts'

/** A pencil note in words. */
export interface HandedNote {
  readonly by: string
  readonly words: string
  /** What it is pinned to. */
  readonly where: string
}

/** What was agreed, and by whom; the last of the chain is what may be written down to prove it. */
export interface HandedLock {
  readonly number: number
  readonly by: string
  readonly atMs: number
  readonly conditions: string
  readonly stands: boolean
  readonly chainEnd: string
  readonly yeses: readonly { readonly by: string; readonly words: string; readonly atMs: number }[]
}

export interface HandOverParts {
  readonly plan: Plan
  readonly lookId: string
  readonly prediction: Prediction
  /** All that were recorded, by their keys. */
  readonly asShot: Readonly<Record<string, AsShot>>
  readonly notes: readonly HandedNote[]
  /** Of this look, the earliest first. */
  readonly locks: readonly HandedLock[]
  readonly units: Units
  /** Of the pictures that lie beside the texts. */
  readonly pictureNames: readonly string[]
  /** Of its stands at wrap, in the order in which they were taken. */
  readonly photographs: readonly HandedPhotograph[]
  readonly madeMs: number
}

export interface HandedFile {
  readonly name: string
  readonly text: string
}

/** The texts of the folder that goes to retouch, the one to be read first at the top. */
export function handOverFiles(parts: HandOverParts): readonly HandedFile[] {
  const { plan, lookId, prediction, asShot, units } = parts
  const look = plan.looks[lookId]
  if (look === undefined) throw new RangeError(`The plan has no look called ${lookId}`)
  const stands = standsOf(plan, lookId, prediction)
  const oneLook = (from: Plan): string => writeJobFile({ ...from, looks: { [lookId]: from.looks[lookId]! } })
  const files: readonly (HandedFile & { readonly words: string })[] = [
    { name: 'What is meant.txt', words: 'place by place, what is the look and what is a fault', text: withNotes(intentText(plan, lookId, prediction), parts.notes) },
    { name: 'Recipe.txt', words: 'white balance, white point, contrast', text: recipeText(plan, lookId, prediction) },
    { name: 'Clean plates.txt', words: 'which frames carry a true colour', text: cleanPlatesText(plan, lookId, prediction) },
    { name: 'As shot.txt', words: 'how the set truly stood', text: asShotText(plan, lookId, stands, asShot, parts.photographs, units) },
    { name: 'Agreed.txt', words: 'who said yes to what, and when', text: agreedText(look.name, parts.locks) },
    { name: 'Plan as planned.halfstop.json', words: 'the plan, to be opened on a board', text: oneLook(plan) },
    { name: 'Plan as shot.halfstop.json', words: 'the same with the places, powers and gels that were recorded', text: oneLook(planAsShot(plan, lookId, stands, asShot)) },
  ]
  const photographs = photographsInWords(parts.photographs)
  const readme = [
    `${plan.title}: “${look.name}”, for retouch`, '',
    'The PNG pictures here are predicted, not photographed: they show what was meant, to be held beside the files.', '',
    ...parts.pictureNames.map((name, i) => `- ${name}: ${i === 0 ? 'the Frame as intended' : 'one light alone: what that light does'}`),
    ...files.map(({ name, words }) => `- ${name}: ${words}`),
    ...(photographs === null ? [] : [`- ${photographs}`]), '',
    'Start with “What is meant.txt”. If a thing is in none of these, ask before it is cleaned away.', '',
    `Made ${dayText(parts.madeMs)}.`, '',
  ].join('\n')
  return [{ name: 'READ ME FIRST.txt', text: readme }, ...files.map(({ name, text }) => ({ name, text }))]
}

function withNotes(text: string, notes: readonly HandedNote[]): string {
  return notes.length === 0 ? text : [text, 'What was said about it:', ...notes.map(({ by, words, where }) => `- ${where}: “${words}” (${by})`), ''].join('\n')
}

function agreedText(name: string, locks: readonly HandedLock[]): string {
  if (locks.length === 0) return [`“${name}” was not locked: nobody’s yes is on record.`, ''].join('\n')
  return [
    `What was agreed of “${name}”`, '',
    ...locks.flatMap(({ number, by, atMs, conditions, stands, chainEnd, yeses }) => [
      `Lock ${number}, by ${by}, ${dayText(atMs)}${stands ? ': it stands' : ', superseded by a later one'}.`,
      ...(conditions === '' ? [] : [`  On condition: ${conditions}`]),
      ...yeses.map((yes) => `  Yes from ${yes.by}, ${dayText(yes.atMs)}${yes.words === '' ? '' : `: “${yes.words}”`}`),
      ...(yeses.length === 0 ? ['  No yes yet.'] : []),
      `  Seal: ${chainEnd}`, '',
    ]),
  ].join('\n')
}
