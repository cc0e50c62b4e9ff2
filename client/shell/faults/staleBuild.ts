const key = 'halfstop.reloaded'
/** A second try sooner than this would be a page that loads itself for ever. */
const pauseMs = 20_000

/**
 * Loads the page afresh when a part of it is gone from the server because a newer build took its place. Not without a
 * network, where loading afresh could lose the page that is here, and not twice in a row.
 */
export function reloadOnStaleBuild(): void {
  addEventListener('vite:preloadError', (event) => {
    const lastMs = Number(sessionStorage.getItem(key) ?? 0)
    if (!navigator.onLine || Date.now() - lastMs < pauseMs) return
    sessionStorage.setItem(key, String(Date.now()))
    event.preventDefault()
    location.reload()
  })
}
