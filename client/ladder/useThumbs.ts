import { useSyncExternalStore } from 'react'

/** The same condition under which the theme makes targets as large as a thumb. */
const query = '(pointer: coarse), (max-width: 700px)'

/** Whether the board is worked with thumbs. */
export function useThumbs(): boolean {
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
