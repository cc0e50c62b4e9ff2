import { useCallback, useEffect, useRef, useState } from 'react'
import type { PixelShare } from '../../../shared-core/predict/whoLights.ts'
import { useBoardStore } from '../../session/useBoard.ts'
import { pictureDesk } from '../picture/pictureDesk.ts'
import { readingAt, type Reading, type ShownPicture } from '../picture/reading.ts'
import { ROOM_LETTERS } from '../picture/viewLetters.ts'
import type { LitBy } from './readingWords.ts'
import { sharesInPercent } from './sharesInPercent.ts'

/** Where a reading is taken. A pointer's goes with it; a finger's or the keyboard's stays, and has a mark. */
export interface ReadingPlace {
  /** 0-1 from the left and the top. */
  readonly frameX: number
  readonly frameY: number
  readonly by: 'pointer' | 'finger' | 'keys'
}

export interface TakenReading {
  readonly place: ReadingPlace
  readonly reading: Reading
  /** Nobody where no light is; null until the answer is there. */
  readonly litBy: readonly LitBy[] | null
}

export interface ReadingHand {
  readonly taken: TakenReading | null
  readAt(place: ReadingPlace | null): void
  /** A new picture is on the canvas: what is read there is read again. */
  pictureCame(shown: ShownPicture): void
}

/** Reads the picture that is on the canvas at one place, and asks who lights it. */
export function useReading(): ReadingHand {
  const store = useBoardStore()
  const picture = useRef<ShownPicture | null>(null)
  const place = useRef<ReadingPlace | null>(null)
  const [taken, setTaken] = useState<TakenReading | null>(null)

  const read = useCallback(() => {
    const [at, shown] = [place.current, picture.current]
    const look = shown?.plan.looks[shown.lookId]
    const reading = at && shown && look ? readingAt(shown, at.frameX, at.frameY, look.camera, look.finish) : null
    if (at === null || shown === null || reading === null) return setTaken(null)
    // Who lights it comes a moment later: until then it is as it was, so that the line does not come and go.
    setTaken((last) => ({ place: at, reading, litBy: last?.litBy ?? null }))
    pictureDesk()?.askShares({ slot: 'shares', kind: 'shares', frameX: at.frameX, frameY: at.frameY }, (shares) => {
      if (place.current === at) setTaken({ place: at, reading, litBy: litByOf(shares, shown, store.getState().prediction.lights) })
    })
  }, [store])

  const readAt = useCallback((next: ReadingPlace | null) => {
    place.current = next
    read()
  }, [read])

  const pictureCame = useCallback((shown: ShownPicture) => {
    picture.current = shown
    if (place.current !== null) read()
  }, [read])

  useEffect(() => () => { place.current = null }, [])
  return { taken, readAt, pictureCame }
}

function litByOf(
  shares: readonly PixelShare[], { plan, lookId }: ShownPicture, lights: readonly { id: string, gel: { clear: boolean, onWhite: string } }[],
): readonly LitBy[] {
  const percents = sharesInPercent(shares.map(({ share }) => share))
  return shares
    .map(({ lightId }, i): LitBy => {
      const gel = lights.find(({ id }) => id === lightId)?.gel
      const letter = lightId === null ? ROOM_LETTERS : (plan.looks[lookId]?.lights[lightId]?.letter ?? '')
      return { letter, percent: percents[i]!, gelHex: gel === undefined || gel.clear ? null : gel.onWhite }
    })
    .sort((a, b) => b.percent - a.percent)
}
