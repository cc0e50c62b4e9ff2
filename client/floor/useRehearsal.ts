import { useEffect } from 'react'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { pictureDesk } from '../frame/picture/pictureDesk.ts'
import { rehearseNumbers } from '../session/rehearseNumbers.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'

/** What is compiled stays so while the page is open. */
let isRehearsed = false

/**
 * Once a page, where lights can be moved by somebody who may and who sees it: rehearses numbers and picture of a drag. Who
 * only looks on, or has the picture alone before them, pays nothing for it.
 */
export function useRehearsal(): void {
  const store = useBoardStore()
  const mayEdit = useBoard((board) => board.mayEdit)
  useEffect(() => {
    if (!mayEdit || isRehearsed) return
    let stop = () => undefined as void
    const beginIfSeen = () => {
      if (isRehearsed || document.visibilityState !== 'visible') return
      isRehearsed = true
      pictureDesk()?.handIsNear()
      const { plan, lookId } = store.getState()
      stop = rehearseNumbers(createPredictor(), plan, lookId)
    }
    beginIfSeen()
    document.addEventListener('visibilitychange', beginIfSeen)
    return () => {
      document.removeEventListener('visibilitychange', beginIfSeen)
      stop()
    }
  }, [store, mayEdit])
}
