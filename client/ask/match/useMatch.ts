import { useEffect, useState } from 'react'
import type { ColourMatch, ColourTarget } from '../../../shared-core/ask/matchColour.ts'
import type { AreaId } from '../../../shared-core/predict/prediction.ts'
import { useBoard } from '../../session/useBoard.ts'
import { askDesk } from '../pageDesk.ts'

const SLOT = 'match-colour'
/** An eye-dropper that is dragged asks once it rests. */
const REST_MS = 250

export interface Matching {
  readonly match: ColourMatch | null
  /** 0-1 while it is worked on. */
  readonly share: number | null
  readonly trouble: string
}

/** The ways to a colour on an area with the look on the board, found anew when one of them changes. */
export function useMatch(areaId: AreaId, target: ColourTarget | null): Matching {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const [matching, setMatching] = useState<Matching>({ match: null, share: null, trouble: '' })
  useEffect(() => {
    if (target === null) return
    const timer = setTimeout(() => {
      setMatching(({ match }) => ({ match, share: 0, trouble: '' }))
      askDesk().order<'match-colour'>({ slot: SLOT, kind: 'match-colour', plan, lookId, areaId, target }, {
        progress: (share) => setMatching(({ match }) => ({ match, share, trouble: '' })),
        answered: (match) => setMatching({ match, share: null, trouble: '' }),
        failed: (trouble) => setMatching({ match: null, share: null, trouble }),
      })
    }, REST_MS)
    return () => clearTimeout(timer)
  }, [plan, lookId, areaId, target])
  useEffect(() => () => askDesk().cancel(SLOT), [])
  return matching
}
