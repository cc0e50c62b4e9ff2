import { useEffect, useState } from 'react'
import { z } from 'zod'
import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import { canonicalJson } from '../../../shared-core/notes/canonical.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { readKept, writeKept } from '../../connection/kept.ts'
import { sha256OffThread } from '../../notes/engine/planHash.ts'

/** Of each look, by seat and id: the hash of the look as it was when all its stand-ins had been seen on this device. */
type Seen = Readonly<Record<string, string>>

const KEY = 'halfstop-stand-ins-seen'
const schema = z.record(z.string(), z.string())
const store = createStore<Seen>()(() => readKept(KEY, schema, {}))

/** Whether this device has shown all stand-ins of a look: as it is, as it was before something changed, or never. */
export type StandInsSeen = 'seen' | 'seen-before' | 'not-seen'

export const STAND_INS_SEEN_WORDS: Readonly<Record<StandInsSeen, string>> = {
  'seen': 'Stand-ins seen',
  'seen-before': 'Stand-ins seen before the last change',
  'not-seen': 'Stand-ins not yet seen',
}

/** Remembers that every stand-in of the look was drawn and looked at. */
export async function markStandInsSeen(seatId: string, plan: Plan, lookId: string): Promise<void> {
  const hash = await lookHash(plan, lookId)
  store.setState({ [keyOf(seatId, lookId)]: hash })
  writeKept(KEY, store.getState())
}

export function useStandInsSeen(seatId: string, plan: Plan, lookId: string): StandInsSeen {
  const seen = useStore(store, (all) => all[keyOf(seatId, lookId)])
  const look = plan.looks[lookId]
  const [hash, setHash] = useState<string | null>(null)
  useEffect(() => {
    let isWanted = true
    void lookHash(plan, lookId).then((now) => isWanted && setHash(now))
    return () => { isWanted = false }
    // eslint-disable-next-line react-hooks/exhaustive-deps -- the rest of the plan is not in the hash
  }, [look, lookId])
  if (seen === undefined) return 'not-seen'
  return seen === hash ? 'seen' : 'seen-before'
}

function keyOf(seatId: string, lookId: string): string {
  return `${seatId}/${lookId}`
}

function lookHash(plan: Plan, lookId: string): Promise<string> {
  return sha256OffThread(new TextEncoder().encode(canonicalJson(plan.looks[lookId] ?? null)))
}
