/** Where two JSON texts first part, as path and both values; null when they are the same to the last bit. */
export function firstDifference(one: string, other: string): string | null {
  return one === other ? null : difference(JSON.parse(one), JSON.parse(other), '') ?? 'same values in another order'
}

function difference(one: unknown, other: unknown, path: string): string | null {
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return Object.is(one, other) ? null : `${path}: ${String(one)} against ${String(other)}`
  }
  for (const key of new Set([...Object.keys(one), ...Object.keys(other)])) {
    const found = difference((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key], `${path}.${key}`)
    if (found) return found
  }
  return null
}
