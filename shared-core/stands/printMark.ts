/** What the scan mark of a printed page says: which look, in what state of the plan, and how each stand was then. No key. */
export interface PrintMark {
  readonly jobId: string
  readonly lookId: string
  /** The lock whose plan was printed; null for a draft. */
  readonly lockNumber: number | null
  /** First twelve hexadecimal digits of the printed plan's SHA-256; empty where it is not known. */
  readonly planHashStart: string
  /** Digest of each stand as printed, marks first; see standDigest. */
  readonly digests: readonly string[]
  /** 1 is the first page. */
  readonly page: number
}

export const HASH_START_LENGTH = 12
const DIGEST_LENGTH = 3

const PATH = /^\/p\/([A-Za-z0-9_-]{1,64})\/?$/

/** The address of a mark: `/p/<jobId>?l=<look>&v=<lock number>.<hash>&s=<digests>&n=<page>`. */
export function printAddress({ jobId, lookId, lockNumber, planHashStart, digests, page }: PrintMark): string {
  const state = `${lockNumber ?? ''}.${planHashStart}`
  return `/p/${jobId}?l=${encodeURIComponent(lookId)}&v=${state}&s=${digests.join('')}&n=${page}`
}

/** The mark in an address; null for what no print of ours carries. */
export function readPrintMark({ pathname, search }: { readonly pathname: string; readonly search: string }): PrintMark | null {
  const jobId = PATH.exec(pathname)?.[1]
  const asked = new URLSearchParams(search)
  const lookId = asked.get('l') ?? ''
  const [, lock, planHashStart] = /^(\d{0,6})\.([0-9a-f]{12}|)$/.exec(asked.get('v') ?? '') ?? []
  const digests = asked.get('s') ?? ''
  const page = Number(asked.get('n') ?? '1')
  if (jobId === undefined || planHashStart === undefined || !/^[A-Za-z0-9_-]{1,64}$/.test(lookId)) return null
  if (!/^[A-Za-z0-9_-]*$/.test(digests) || digests.length % DIGEST_LENGTH !== 0 || !Number.isInteger(page) || page < 1) return null
  return {
    jobId, lookId, planHashStart, page,
    lockNumber: lock === '' ? null : Number(lock),
    digests: digests.match(/.{3}/g) ?? [],
  }
}
