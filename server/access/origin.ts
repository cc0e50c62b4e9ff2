import type { IncomingHttpHeaders } from 'node:http'

export interface OriginRule {
  /** The one origin let in; empty: whatever address this relay was called by. */
  readonly publicOrigin: string
  readonly isSecure: boolean
  /** Bound to this machine alone. Then only its own names are let in, or a foreign name led here could pose as ours. */
  readonly isLoopback: boolean
}

const LOOPBACK_NAMES = new Set(['localhost', '127.0.0.1', '[::1]'])

/** Whether an address to listen on is reached from this machine alone. */
export function isLoopbackHost(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(\.\d{1,3}){3}$/.test(host)
}

/** The origin a request was made to; null when its Host header is none of ours. */
export function originCalled(headers: IncomingHttpHeaders, rule: OriginRule): string | null {
  if (rule.publicOrigin !== '') return rule.publicOrigin
  const address = `${rule.isSecure ? 'https' : 'http'}://${headers.host ?? ''}`
  if (!URL.canParse(address)) return null
  const { hostname, origin } = new URL(address)
  return rule.isLoopback && !LOOPBACK_NAMES.has(hostname) ? null : origin
}

/**
 * Whether a request may act with a seat's rights: it comes from our own page, or from no page at all. A browser names
 * its page in Origin and cannot be made to leave it out here; a program that leaves it out is no page of another site.
 */
export function isOwnPage(headers: IncomingHttpHeaders, rule: OriginRule): boolean {
  const called = originCalled(headers, rule)
  if (called === null) return false
  const site = headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return false
  return headers.origin === undefined || headers.origin === called
}
