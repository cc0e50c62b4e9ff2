/**
 * A value equal to `next` that keeps every branch of `before` that is equal too. A plan that came through a message is
 * all new objects; what remembers its work by identity needs the old ones back.
 */
export function shareBranches<Value>(before: unknown, next: Value): Value {
  if (Object.is(before, next)) return next
  if (typeof before !== 'object' || typeof next !== 'object' || before === null || next === null) return next
  if (Array.isArray(before) !== Array.isArray(next)) return next
  const old = before as Readonly<Record<string, unknown>>
  const fresh = next as Readonly<Record<string, unknown>>
  const keys = Object.keys(fresh)
  const entries = keys.map((key) => [key, shareBranches(Object.hasOwn(old, key) ? old[key] : undefined, fresh[key])] as const)
  const isSame = keys.length === Object.keys(old).length && entries.every(([key, value]) => Object.hasOwn(old, key) && Object.is(old[key], value))
  if (isSame) return before as Value
  return (Array.isArray(next) ? entries.map(([, value]) => value) : Object.fromEntries(entries)) as Value
}
