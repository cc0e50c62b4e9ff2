import type { Reference } from '../../ask/match/reference.ts'
import { keepPicture } from '../../connection/api.ts'

/** Has the relay keep a photograph as it was measured: the name it is kept under, or null where that could not be. */
export async function keptPhoto(seatId: string, { pixels }: Reference): Promise<string | null> {
  try {
    const canvas = new OffscreenCanvas(pixels.width, pixels.height)
    canvas.getContext('2d')?.putImageData(pixels, 0, 0)
    const answer = await keepPicture(seatId, await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 }))
    return answer.ok ? answer.value.hash : null
  } catch {
    return null
  }
}
