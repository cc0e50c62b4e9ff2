/**
 * The one text of a JSON value, whatever the order its keys were set in: keys sorted by UTF-16 code units, numbers as
 * ECMAScript writes them, no spaces (RFC 8785, JSON Canonicalization Scheme). What is hashed is this text.
 *
 * @throws TypeError for what JSON cannot say: undefined, functions, numbers that are not finite
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    const group = value as Readonly<Record<string, unknown>>
    return `{${Object.keys(group).sort().map((key) => `${JSON.stringify(key)}:${canonicalJson(group[key])}`).join(',')}}`
  }
  const isSayable = value === null || typeof value === 'string' || typeof value === 'boolean' || Number.isFinite(value)
  if (!isSayable) throw new TypeError('This value has no JSON')
  return JSON.stringify(value)
}
