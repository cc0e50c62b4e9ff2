const MINUTE_MS = 60_000
const DAY_MS = 24 * 60 * MINUTE_MS

/** When something was said: "just now", "4 min ago", then the time, then the day. @param nowMs milliseconds since 1970 */
export function whenWords(atMs: number, nowMs: number): string {
  const ago = nowMs - atMs
  if (ago < MINUTE_MS) return 'just now'
  if (ago < 60 * MINUTE_MS) return `${Math.floor(ago / MINUTE_MS)} min ago`
  const at = new Date(atMs)
  if (ago < DAY_MS) return at.toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })
  return at.toLocaleDateString(undefined, { day: 'numeric', month: 'short' })
}
