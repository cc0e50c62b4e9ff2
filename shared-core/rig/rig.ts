import { z } from 'zod'
import { applianceSchema } from './appliances.ts'
import { asShotSchema, standPhotoSchema } from './asShot.ts'
import { moveTickSchema } from './moves.ts'
import { packedSchema } from './packed.ts'
import { readingSchema } from './readings.ts'
import { gelSheetSchema } from './sheets.ts'
import { tickSchema } from './ticks.ts'
import { triggerSchema } from './triggers.ts'

/**
 * What is kept of the day itself, apart from the plan: one record of entries a kind. Each kind has its schema in a file
 * of its own. An entry is small and set whole; the last to write it counts, so two people who write different entries
 * both have theirs.
 */
export const rigKinds = {
  ticks: tickSchema,
  triggers: triggerSchema,
  sheets: gelSheetSchema,
  packed: packedSchema,
  appliances: applianceSchema,
  readings: readingSchema,
  moves: moveTickSchema,
  asShot: asShotSchema,
  standPhotos: standPhotoSchema,
} as const

export type RigKind = keyof typeof rigKinds
export const RIG_KINDS = Object.keys(rigKinds) as readonly RigKind[]

export type RigEntry<Kind extends RigKind> = Readonly<z.infer<(typeof rigKinds)[Kind]>>
export type Rig = { readonly [Kind in RigKind]: Readonly<Record<string, RigEntry<Kind>>> }

/** An entry's key: ids of the plan, joined by dots where it takes several. */
export const rigKeyText = z.string().regex(/^[A-Za-z0-9_.-]{1,200}$/).refine((key) => !(key in Object.prototype))

/** Entries of one kind past this are not read: no day has so many. */
export const RIG_ENTRIES_MOST = 5_000

export const emptyRig = Object.fromEntries(RIG_KINDS.map((kind) => [kind, {}])) as unknown as Rig

/** One entry put in its place, or taken out by null. */
export type RigEdit = {
  readonly [Kind in RigKind]: { readonly kind: Kind; readonly key: string; readonly entry: RigEntry<Kind> | null }
}[RigKind]

/** The entry as its kind has it, or null for what nobody of this version wrote. */
export function readRigEntry<Kind extends RigKind>(kind: Kind, value: unknown): RigEntry<Kind> | null {
  const parsed = rigKinds[kind].safeParse(value)
  return parsed.success ? (parsed.data as unknown as RigEntry<Kind>) : null
}
