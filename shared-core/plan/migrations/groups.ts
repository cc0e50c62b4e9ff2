/** A branch of a plan of any version: JSON of no type. */
export type Group = Readonly<Record<string, unknown>>

/** Every entry of a record changed. What is no group is handed on as it is: the reader says what is wrong with it. */
export function eachOf(record: unknown, change: (entry: Group) => Group): unknown {
  if (!isGroup(record)) return record
  return Object.fromEntries(Object.entries(record).map(([id, entry]) => [id, isGroup(entry) ? change(entry) : entry]))
}

export function isGroup(value: unknown): value is Group {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
