/** What an address asks for. */
export type Route =
  | { readonly page: 'welcome' }
  | { readonly page: 'join'; readonly jobId: string; readonly linkKey: string }
  | { readonly page: 'board'; readonly seatId: string }
  | { readonly page: 'scanned' }

/**
 * Reads `/`, `/j/<jobId>#<key>`, `/s/<seatId>` and `/p/<jobId>` (the scan mark of a print); everything else is the first page. The key stands after the `#`, which
 * browsers keep to themselves.
 */
export function readRoute(address: { readonly pathname: string; readonly hash: string }): Route {
  const [, part, id] = /^\/([jsp])\/([A-Za-z0-9_-]{1,64})\/?$/.exec(address.pathname) ?? []
  if (id === undefined) return { page: 'welcome' }
  if (part === 'p') return { page: 'scanned' }
  return part === 's' ? { page: 'board', seatId: id } : { page: 'join', jobId: id, linkKey: address.hash.replace(/^#/, '') }
}

/** The address of a pasted link, if it is one of ours: a whole address, or its path. Null for anything else. */
export function readPastedLink(pasted: string, origin: string): string | null {
  try {
    const url = new URL(pasted.trim(), origin)
    if (url.origin !== origin || readRoute(url).page === 'welcome') return null
    return url.pathname + url.search + url.hash
  } catch {
    return null
  }
}
