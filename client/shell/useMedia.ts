import { useSyncExternalStore } from 'react'

/** A phone, upright or on its side. */
export const phone = '(max-width: 700px), (max-height: 500px)'
/** Where the top bar has no room for every word. */
export const shortTopBar = '(max-width: 1380px)'

/** Whether the page is as the media query says, as it changes. */
export function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (listener) => {
      const media = matchMedia(query)
      media.addEventListener('change', listener)
      return () => media.removeEventListener('change', listener)
    },
    () => matchMedia(query).matches,
    () => false,
  )
}
