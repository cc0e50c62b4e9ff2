/** More than any light is known by; fewer than where a root of 2 raised to a whole number of stops shows its last bits. */
const SIGNIFICANT_DIGITS = 12

/** A prediction as JSON for people and programs: every number to 12 significant digits, so that f/8 reads 8. */
export function printed(prediction: unknown): string {
  return JSON.stringify(prediction, (_, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(SIGNIFICANT_DIGITS)) : value), 2)
}
