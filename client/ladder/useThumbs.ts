import { useMedia } from '../shell/useMedia.ts'

/** The same condition under which the theme makes targets as large as a thumb. */
const thumbs = '(pointer: coarse), (max-width: 700px)'

/** Whether the board is worked with thumbs. */
export function useThumbs(): boolean {
  return useMedia(thumbs)
}
