import { useSyncExternalStore } from 'react'

const query = '(max-width: 700px)'

/** Whether the board is on a phone, held upright. */
export function useNarrow(): boolean {
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
