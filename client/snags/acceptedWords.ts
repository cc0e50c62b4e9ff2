import type { Acceptance } from '../../shared-core/plan/schema/look.ts'
import { snagNumber } from './snagNumbers.ts'

const when = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })

/** "Pell Oduya, 20 Nov, 09:30, at 1.9": who wanted it so, when, and how far it went then. */
export function acceptedWords({ by, atMs, value }: Acceptance): string {
  return `${by}, ${when.format(atMs)}, at ${snagNumber(value)}`
}
