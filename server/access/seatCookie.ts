import type { IncomingHttpHeaders } from 'node:http'

const COOKIE = 'halfstop_seat'

export interface SeatCookie {
  readonly seatId: string
  readonly secret: string
  readonly maxAgeSeconds: number
  /** Behind TLS the cookie never travels in clear. */
  readonly isSecure: boolean
}

/** The header that gives a browser its seat, for that seat's own paths only: three roles fit in one browser. */
export function setSeatCookie({ seatId, secret, maxAgeSeconds, isSecure }: SeatCookie): string {
  const parts = [`${COOKIE}=${secret}`, `Path=/s/${seatId}`, `Max-Age=${maxAgeSeconds}`, 'HttpOnly', 'SameSite=Strict']
  return [...parts, ...(isSecure ? ['Secure'] : [])].join('; ')
}

/**
 * The secret that a request brings for its seat: the cookie's, or for programs without a cookie jar the one in
 * `Authorization: Bearer`. Null when it brings none.
 */
export function secretOfRequest(headers: IncomingHttpHeaders): string | null {
  const bearer = /^Bearer ([A-Za-z0-9_-]{1,200})$/.exec(headers.authorization ?? '')?.[1]
  if (bearer !== undefined) return bearer
  for (const pair of (headers.cookie ?? '').split(';')) {
    const [name, value] = pair.trim().split('=', 2)
    if (name === COOKIE && value !== undefined) return value
  }
  return null
}
