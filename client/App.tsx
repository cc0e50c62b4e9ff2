import { useMemo } from 'react'
import { createBoardStore } from './session/boardStore.ts'
import { noCompany } from './session/company.ts'
import { createLocalPlan } from './session/localPlan.ts'
import { demoPlan } from '../shared-core/plan/demo/demoPlan.ts'
import { temporaryPrediction } from './session/temporaryPrediction.ts'
import { BoardContext } from './session/useBoard.ts'
import { BoardPage } from './shell/BoardPage.tsx'

export function App() {
  const store = useMemo(
    () =>
      createBoardStore({
        plan: createLocalPlan(demoPlan),
        company: noCompany,
        role: 'photographer',
        connection: { state: 'live', words: 'Live', notKept: null },
        predict: temporaryPrediction,
        onNextFrame: (callback) => requestAnimationFrame(callback),
        units: 'metric',
        keepUnits: () => undefined,
      }),
    [],
  )
  return (
    <BoardContext value={store}>
      <BoardPage />
    </BoardContext>
  )
}
