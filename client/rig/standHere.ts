import { useState } from 'react'
import { z } from 'zod'
import { readKept, writeKept } from '../connection/kept.ts'

const hereKey = 'halfstop.rig'
const hereSchema = z.record(z.string(), z.string())

/** Which stand of a look this device is at: a phone that was put away wakes where it was. */
export function useStandHere(lookId: string, standIds: readonly string[]): readonly [number, (index: number) => void] {
  const [kept, setKept] = useState(() => readKept(hereKey, hereSchema, {}))
  const found = standIds.indexOf(kept[lookId] ?? '')
  const goTo = (index: number): void => {
    const id = standIds[index]
    if (id === undefined) return
    const next = { ...readKept(hereKey, hereSchema, {}), [lookId]: id }
    writeKept(hereKey, next)
    setKept(next)
  }
  return [Math.max(0, found), goTo]
}
