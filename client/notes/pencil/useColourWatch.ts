import { useEffect } from 'react'
import { onShownFrame, shownFrame } from '../../frame/picture/shownFrame.ts'
import { useBoardStore } from '../../session/useBoard.ts'
import type { Board } from '../../session/board.ts'
import { useThreads } from '../useNotes.ts'
import type { Thread } from '../engine/threads.ts'
import { framePlaceOfPin } from './framePlace.ts'
import { pencilStore } from './pencilStore.ts'
import { coloursAbout } from './placeColour.ts'
import { colourAbout, pinnedColour } from './reread.ts'

/** Colours are judged when hand and picture rest, not on their way. */
const REST_MS = 300

/** Keeps up what colour the place of every note of the shown look shows now. */
export function useColourWatch(): void {
  const board = useBoardStore()
  const threads = useThreads()
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const look = (): void => {
      clearTimeout(timer)
      timer = setTimeout(() => {
        const now = coloursNow(threads, board.getState(), pencilStore.getState().hiddenIds)
        if (now !== null) pencilStore.setState({ coloursNow: now })
      }, REST_MS)
    }
    look()
    const stops = [onShownFrame(look), board.subscribe((state, before) => state.prediction !== before.prediction && look())]
    return () => {
      clearTimeout(timer)
      for (const stop of stops) stop()
    }
  }, [board, threads])
}

/** By note; null while something is in a hand, or seen alone, or as it was before. */
function coloursNow(threads: readonly Thread[], { plan, shown, lookId, prediction, soloLightId, seesBefore }: Board, hiddenIds: ReadonlySet<string>): Readonly<Record<string, string>> | null {
  const look = plan.looks[lookId]
  if (shown !== plan || soloLightId !== null || seesBefore || look === undefined) return null
  const picture = shownFrame()
  // A picture drawn of the plan before would be judged as the plan's now.
  const isOfNow = picture?.isFull === true && picture.plan === plan && picture.lookId === lookId
  const now: Record<string, string> = {}
  for (const { id, note } of threads) {
    const was = pinnedColour(note)
    if (note.lookId !== lookId || was === null || hiddenIds.has(id)) continue
    const colour = colourOf(note, was)
    if (colour !== null) now[id] = colour
  }
  return now

  function colourOf({ pin }: Thread['note'], was: string): string | null {
    if (pin.on === 'colour') return prediction.areas.find((area) => area.id === pin.areaId)?.colour.display ?? null
    if (pin.on === 'gel') return prediction.lights.find((light) => light.id === pin.lightId)?.gel.onWhite ?? null
    const place = isOfNow && look ? framePlaceOfPin(pin, look, prediction.areas) : null
    return place && picture && look ? colourAbout(was, coloursAbout(picture, place, look.camera, look.finish)) : null
  }
}
