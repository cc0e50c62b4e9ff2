import { useEffect, useState } from 'react'
import { z } from 'zod'
import { keptOf } from '../../notes/engine/keptThings.ts'
import { sha256OffThread } from '../../notes/engine/planHash.ts'
import { useNotes } from '../../notes/useNotes.ts'

/** Of a kept prediction, what is shown; it may be of an older program, so nothing else is asked of it. */
const predictionSchema = z.object({
  lights: z.array(z.object({ id: z.string(), letter: z.string(), summary: z.string(), on: z.boolean() })),
})
export type LockedLight = z.infer<typeof predictionSchema>['lights'][number]

/** The lights as the prediction kept with a lock has them; null while it is fetched, and where it is not what was kept. */
export function useLockedLights(predictionHash: string): readonly LockedLight[] | null {
  const seatId = useNotes((notes) => notes.seat.seatId)
  const [found, setFound] = useState<{ readonly hash: string; readonly lights: readonly LockedLight[] } | null>(null)
  useEffect(() => {
    let isWanted = true
    void readLights(seatId, predictionHash).then((lights) => isWanted && lights !== null && setFound({ hash: predictionHash, lights }))
    return () => { isWanted = false }
  }, [seatId, predictionHash])
  return found?.hash === predictionHash ? found.lights : null
}

async function readLights(seatId: string, hash: string): Promise<readonly LockedLight[] | null> {
  const kept = await keptOf(seatId)(hash)
  if (!kept.ok || await sha256OffThread(kept.value) !== hash) return null
  try {
    return predictionSchema.parse(JSON.parse(new TextDecoder().decode(kept.value))).lights
  } catch {
    return null
  }
}
