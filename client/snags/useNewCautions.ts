import { useEffect, useRef, useState } from 'react'
import type { Caution } from '../../shared-core/predict/caution.ts'
import { useBoard } from '../session/useBoard.ts'

/**
 * Cautions that arose while this person was at the board: by a piece placed, raised or moved near a face. What a look
 * already held when it was opened is in the list below and is not pressed on anybody.
 */
export function useNewCautions(): { readonly fresh: readonly Caution[]; readonly understood: () => void } {
  const cautions = useBoard((board) => board.prediction.cautions)
  const lookId = useBoard((board) => board.lookId)
  const known = useRef(new Set<string>())
  const knownLook = useRef('')
  const [freshKeys, setFreshKeys] = useState<readonly string[]>([])

  useEffect(() => {
    if (knownLook.current !== lookId) {
      knownLook.current = lookId
      cautions.forEach(({ key }) => known.current.add(`${lookId} ${key}`))
      setFreshKeys([])
      return
    }
    const arisen = cautions.filter(({ key }) => !known.current.has(`${lookId} ${key}`)).map(({ key }) => key)
    if (arisen.length === 0) return
    arisen.forEach((key) => known.current.add(`${lookId} ${key}`))
    setFreshKeys((before) => [...before, ...arisen])
  }, [cautions, lookId])

  // A caution leaves by itself when its cause does: undone, lowered, moved away.
  const fresh = cautions.filter(({ key }) => freshKeys.includes(key))
  return { fresh, understood: () => setFreshKeys([]) }
}
