import { useEffect, useMemo, useState } from 'react'
import { forgetHand, openAskFromHand, takeHand, wantsOfLook, wantsWith } from '../ask/askPanelStore.ts'
import { askDesk } from '../ask/pageDesk.ts'
import { useBoardStore } from '../session/useBoard.ts'
import { AreaPull, type PulledArea } from './areaPull.ts'

/** A hand on an area's level: what gives it is shown everywhere while it moves, and asked for when it lets go. */
export interface AreaHand {
  readonly pulled: PulledArea | null
  /** From the level the area had when it was taken. */
  pull(areaId: string, stops: number): void
  /** One more touch of a key. */
  nudge(areaId: string, stops: number): void
  /** Asks for the level it was pulled to; false when nothing was in hand. */
  done(): boolean
  /** Lets go and puts back. */
  cancel(): void
  /** Asks for a level that was typed. */
  type(areaId: string, stops: number): void
}

export function useAreaHand(): AreaHand {
  const store = useBoardStore()
  const [pulled, setPulled] = useState<PulledArea | null>(null)
  const hand = useMemo(() => {
    const areaPull = new AreaPull({
      board: store.getState,
      desk: askDesk,
      wantsWith: (lookId, want) => wantsWith(wantsOfLook(lookId), [want]),
      changed: setPulled,
    })
    const ask = (areaId: string, stops: number) => openAskFromHand(store.getState().lookId, { kind: 'area-level', areaId, stops })
    return {
      pull(areaId: string, stops: number) {
        if (!store.getState().mayEdit) return
        takeHand()
        areaPull.pull(areaId, stops)
      },
      nudge(areaId: string, stops: number) {
        if (!store.getState().mayEdit) return
        takeHand()
        areaPull.nudge(areaId, stops)
      },
      done() {
        const last = areaPull.letGo()
        if (last) ask(last.areaId, last.wantedStops)
        return last !== null
      },
      cancel() {
        if (areaPull.cancel()) forgetHand()
      },
      type(areaId: string, stops: number) {
        areaPull.cancel()
        ask(areaId, stops)
      },
    }
  }, [store])

  const isPulling = pulled !== null
  // Wherever the focus is while a hand pulls, Escape puts back.
  useEffect(() => {
    if (!isPulling) return undefined
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      event.preventDefault()
      event.stopPropagation()
      hand.cancel()
    }
    addEventListener('keydown', onKeyDown, true)
    return () => removeEventListener('keydown', onKeyDown, true)
  }, [hand, isPulling])

  // Without the right to change nothing stays in hand; nor does it in a ladder that goes away.
  useEffect(() => store.subscribe(({ mayEdit }, before) => {
    if (before.mayEdit && !mayEdit) hand.cancel()
  }), [store, hand])
  useEffect(() => hand.cancel, [hand])
  return { ...hand, pulled }
}
