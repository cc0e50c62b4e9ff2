import { useEffect, useMemo, useRef, useState } from 'react'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import { setPower } from '../../shared-core/plan/edits/lights.ts'
import { useBoardStore } from '../session/useBoard.ts'
import { movedPower, nudgedPower, type PowerMove } from './powerMove.ts'

/** A hand on a light's power: shown everywhere while it moves, written once when it lets go. */
export interface PowerHand {
  /** Light in the hand and how far past its range it is pulled; null when none is. */
  readonly inHand: { readonly lightId: string; readonly pastRangeStops: number } | null
  /** From the power the light had when it was taken. */
  pull(lightId: string, stops: number): void
  /** One more touch of a key or notch of a wheel. */
  nudge(lightId: string, stops: number): void
  toFull(lightId: string): void
  toLowest(lightId: string): void
  /** Writes what was shown. */
  done(): void
  /** Lets go without writing. */
  cancel(): void
}

export function usePowerHand(): PowerHand {
  const store = useBoardStore()
  const shown = useRef<{ readonly lightId: string; readonly energyJoules: number; readonly edit: PlanEdit } | null>(null)
  const [inHand, setInHand] = useState<PowerHand['inHand']>(null)

  const hand = useMemo(() => {
    const lightAndHead = (lightId: string) => {
      const { plan, lookId } = store.getState()
      const light = plan.looks[lookId]?.lights[lightId]
      const head = light && plan.heads[light.headId]
      return light && head ? { light, head } : null
    }
    const show = (lightId: string, move: PowerMove) => {
      const board = store.getState()
      if (!board.mayEdit) return
      const result = setPower(board.plan, board.lookId, lightId, move.energyJoules)
      if (!result.ok) return
      shown.current = { lightId, energyJoules: move.energyJoules, edit: result.edit }
      board.hold(result.edit)
      setInHand({ lightId, pastRangeStops: move.pastRangeStops })
    }
    const letGo = () => {
      const last = shown.current
      shown.current = null
      setInHand(null)
      return last
    }
    const move = (lightId: string, to: (found: NonNullable<ReturnType<typeof lightAndHead>>) => PowerMove) => {
      const found = lightAndHead(lightId)
      if (found) show(lightId, to(found))
    }
    return {
      pull: (lightId: string, stops: number) => move(lightId, ({ light, head }) => movedPower(head, light.energyJoules, stops)),
      nudge: (lightId: string, stops: number) =>
        move(lightId, ({ light, head }) => {
          const from = shown.current?.lightId === lightId ? shown.current.energyJoules : light.energyJoules
          return nudgedPower(head, from, stops)
        }),
      toFull: (lightId: string) => move(lightId, ({ head }) => movedPower(head, head.fullEnergyJoules, 0)),
      toLowest: (lightId: string) => move(lightId, ({ head }) => movedPower(head, head.lowestEnergyJoules, 0)),
      done: () => {
        const last = letGo()
        if (!last) return
        if (last.edit.changes.length > 0) store.getState().edit(last.edit)
        else store.getState().hold(null)
      },
      cancel: () => {
        if (letGo()) store.getState().hold(null)
      },
    }
  }, [store])

  // A ladder that goes away lets go of what it held.
  useEffect(() => hand.cancel, [hand])
  return { ...hand, inHand }
}
