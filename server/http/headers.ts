/**
 * What the page may do. Scripts only from here and never inline; styles also inline, since the board places things by
 * style; pictures from here, memory and data; connections only back here. No frame may hold the page, no form leaves it.
 */
const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/**
 * Headers of every answer. `onlyByTls` keeps browsers to https for a year: right for a name of one's own, wrong for
 * `localhost`, which other programs share.
 */
export function usualHeaders(onlyByTls: boolean): Record<string, string> {
  return {
    'Content-Security-Policy': CONTENT_SECURITY_POLICY,
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Permissions-Policy': 'camera=(), microphone=(), geolocation=()',
    'X-Frame-Options': 'DENY',
    ...(onlyByTls ? { 'Strict-Transport-Security': 'max-age=31536000' } : {}),
  }
}
