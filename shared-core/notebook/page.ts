import { z } from 'zod'
import { readPlan } from '../plan/readPlan.ts'
import { idText, longText } from '../plan/schema/quantities.ts'
import type { Plan } from '../plan/schema/plan.ts'

/** One look as it stood on a day, kept to be found and built again: with the kit, the room and what the meter taught. */
export interface NotebookPage {
  readonly id: string
  readonly keptMs: number
  readonly lookId: string
  /** The job with that look alone. */
  readonly plan: Plan
  /** What worked, what to do otherwise. */
  readonly note: string
  /** The same as it truly stood; null where nobody recorded it. */
  readonly shotPlan: Plan | null
  /** What stood otherwise than planned, in words. */
  readonly asShot: readonly string[]
}

const pageShape = z.strictObject({
  id: idText,
  keptMs: z.number().int().min(0).max(8_640_000_000_000_000),
  lookId: idText,
  plan: z.unknown(),
  shotPlan: z.unknown().nullable(),
  note: longText,
  asShot: z.array(z.string().max(300)).max(200),
})

/** A look as it truly stood: the plan with it, and what was otherwise in words. */
export interface Shot {
  readonly plan: Plan
  readonly words: readonly string[]
}

/** A page to be kept now. @throws RangeError when a plan has no such look */
export function newPage(id: string, keptMs: number, plan: Plan, lookId: string, note: string, shot: Shot | null): NotebookPage {
  return {
    id, keptMs, lookId, note, plan: withLookAlone(plan, lookId),
    shotPlan: shot === null ? null : withLookAlone(shot.plan, lookId), asShot: shot?.words ?? [],
  }
}

function withLookAlone(plan: Plan, lookId: string): Plan {
  const look = plan.looks[lookId]
  if (look === undefined) throw new RangeError(`The plan has no look called ${lookId}`)
  return { ...plan, looks: { [lookId]: look } }
}

/** What is built again: the look as it stood, where somebody recorded it. */
export function builtPlan({ plan, shotPlan }: NotebookPage): Plan {
  return shotPlan ?? plan
}

/** A page from anything, led up to this version; null for what is none. */
export function readPage(value: unknown): NotebookPage | null {
  const shaped = pageShape.safeParse(value)
  if (!shaped.success) return null
  const { lookId } = shaped.data
  const plan = planWith(lookId, shaped.data.plan)
  return plan === null ? null : { ...shaped.data, plan, shotPlan: planWith(lookId, shaped.data.shotPlan) }
}

function planWith(lookId: string, value: unknown): Plan | null {
  const read = readPlan(value)
  return read.ok && read.plan.looks[lookId] !== undefined ? read.plan : null
}

const fileShape = z.strictObject({ halfstopNotebook: z.literal(1), pages: z.array(z.unknown()).max(2_000) })

export function writeNotebook(pages: readonly NotebookPage[]): string {
  return JSON.stringify({ halfstopNotebook: 1, pages })
}

/** Pages of a notebook's file, and how many of them could not be read; null for a file that is none. */
export function readNotebook(text: string): { readonly pages: readonly NotebookPage[]; readonly unread: number } | null {
  const shaped = fileShape.safeParse(parsed(text))
  if (!shaped.success) return null
  const pages = shaped.data.pages.flatMap((page) => readPage(page) ?? [])
  return { pages, unread: shaped.data.pages.length - pages.length }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

/** Latest first, those in which every word that is looked for begins some word: of job, look, note, room, gels, planes. */
export function pagesFound(pages: readonly NotebookPage[], sought: string): readonly NotebookPage[] {
  const words = wordsOf(sought)
  return pages.filter((page) => {
    const own = [...wordsOf(textOf(page))]
    return words.every((word) => own.some((each) => each.startsWith(word)))
  }).sort((a, b) => b.keptMs - a.keptMs)
}

/** What a page is known by, in a line: colours by the gels' own names. */
export function coloursOf({ plan, lookId }: NotebookPage): string {
  const { lights } = plan.looks[lookId]!
  const names = Object.values(lights).filter(({ on }) => on).flatMap(({ gelIds }) => gelIds.map((id) => plan.gels[id]?.name ?? ''))
  return [...new Set(names.filter((name) => name !== ''))].join(', ')
}

function textOf(page: NotebookPage): string {
  const { plan, lookId, note } = page
  const look = plan.looks[lookId]!
  const families = Object.values(look.lights).flatMap(({ gelIds }) => gelIds.map((id) => {
    const source = plan.gels[id]?.source
    return source?.from === 'family' ? source.family : ''
  }))
  return [plan.title, look.name, look.note, note, plan.room.name, coloursOf(page), ...families, ...Object.values(look.lights).map(({ plane }) => plane), shortDate(page.keptMs)].join(' ')
}

function shortDate(keptMs: number): string {
  return new Date(keptMs).toISOString().slice(0, 10)
}

function wordsOf(text: string): readonly string[] {
  return text.toLocaleLowerCase('en').normalize('NFD').replaceAll(/\p{M}/gu, '').split(/[^\p{L}\p{N}]+/u).filter(Boolean)
}

