import { useMemo } from 'react'
import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import { layOutCuts, type GelLayout, type TooLarge } from '../../shared-core/kit/cutLayout.ts'
import { gelCuts } from '../../shared-core/kit/gelCuts.ts'
import { useRig } from '../rig/useRig.ts'
import { useBoard } from '../session/useBoard.ts'
import { useChosenLooks } from './chosenLooks.ts'

/** What to do about cuts that no sheet covers, by gel, on this device. */
const tooLarge = createStore<Readonly<Record<string, TooLarge>>>()(() => ({}))

export function chooseTooLarge(gelId: string, choice: TooLarge): void {
  tooLarge.setState({ [gelId]: choice })
}

export function useTooLarge(gelId: string): TooLarge {
  return useStore(tooLarge, (choices) => choices[gelId] ?? 'say')
}

/** The cuts of the chosen looks, on the sheets that are in the drawer. */
export function useLayouts(): readonly GelLayout[] {
  const plan = useBoard((board) => board.plan)
  const lookIds = useChosenLooks()
  const sheets = useRig(({ rig }) => rig.sheets)
  const choices = useStore(tooLarge, (state) => state)
  return useMemo(
    () => layOutCuts(plan, gelCuts(plan, lookIds), sheets, (gelId) => choices[gelId] ?? 'say'),
    [plan, lookIds, sheets, choices],
  )
}
