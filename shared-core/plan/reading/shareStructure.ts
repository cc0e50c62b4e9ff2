/** The value `after`, made of the objects of `before` wherever the two say the same, so that `===` tells what changed. */
export function shareStructure<Value>(before: unknown, after: Value): Value {
  return shared(before, after) as Value
}

function shared(before: unknown, after: unknown): unknown {
  if (before === after || !isBranch(before) || !isBranch(after)) return after
  const keys = Object.keys(after)
  const beforeKeys = Object.keys(before)
  let same = keys.length === beforeKeys.length && Array.isArray(before) === Array.isArray(after)
  const merged = keys.map((key, index): [string, unknown] => {
    const kept = Object.hasOwn(before, key) ? shared(before[key], after[key]) : after[key]
    same &&= beforeKeys[index] === key && kept === before[key]
    return [key, kept]
  })
  if (same) return before
  return Array.isArray(after) ? merged.map(([, value]) => value) : Object.fromEntries(merged)
}

function isBranch(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}
