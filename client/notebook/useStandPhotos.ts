import { useEffect, useMemo, useState } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import { newId } from '../../shared-core/plan/newId.ts'
import { keptAddress } from '../connection/api.ts'
import { useRig, useRigStore } from '../rig/useRig.ts'
import { useSeat } from '../session/useSeat.ts'
import { createPhotoQueue, type PhotoQueue } from './photoQueue.ts'

export interface StandPhoto {
  readonly id: string
  readonly standId: string
  readonly address: string
  readonly isWaiting: boolean
}

export interface StandPhotos {
  readonly of: (standId: string) => readonly StandPhoto[]
  /** Of all stands of the look, those too that are gone from it. */
  readonly all: readonly StandPhoto[]
  readonly add: (standId: string, file: Blob) => void
  /** Of this device, still to be sent. */
  readonly waiting: number
  readonly trouble: string
}

const nothingWaits = createStore<PhotoQueue>()(() => ({ waiting: [], trouble: '' }))

/** The photographs of a look's stands: those that the relay keeps, and those that wait on this device. */
export function useStandPhotos(lookId: string): StandPhotos {
  const seat = useSeat()
  const seatId = seat?.seatId ?? null
  const rigStore = useRigStore()
  const kept = useRig(({ rig }) => rig.standPhotos)
  const [unreadable, setUnreadable] = useState('')
  const queue = useMemo(() => (seatId === null ? null : createPhotoQueue(seatId, (photo, hash) => {
    const { write, writtenBy } = rigStore.getState()
    write([{ kind: 'standPhotos', key: `${photo.lookId}.${photo.standId}.${photo.id}`, entry: { lookId: photo.lookId, standId: photo.standId, hash, by: writtenBy() } }])
  })), [seatId, rigStore])
  useEffect(() => queue?.start(), [queue])
  const { waiting, trouble } = useStore(queue?.store ?? nothingWaits)
  const own = useMemo(() => waiting.map((photo) => ({ ...photo, address: URL.createObjectURL(photo.jpeg) })), [waiting])
  useEffect(() => () => own.forEach(({ address }) => URL.revokeObjectURL(address)), [own])
  const all = useMemo((): readonly StandPhoto[] => [
    ...(seatId === null ? [] : Object.entries(kept).filter(([, photo]) => photo.lookId === lookId).sort(([, a], [, b]) => a.by.atMs - b.by.atMs)
      .map(([id, { standId, hash }]) => ({ id, standId, address: keptAddress(seatId, hash), isWaiting: false }))),
    ...own.filter((photo) => photo.lookId === lookId).map(({ id, standId, address }) => ({ id, standId, address, isWaiting: true })),
  ], [seatId, kept, own, lookId])
  return {
    all,
    of: (standId) => all.filter((photo) => photo.standId === standId),
    add(standId, file) {
      setUnreadable('')
      queue?.add(newId(), lookId, standId, file).catch(() => setUnreadable('That file is no picture that this browser can read.'))
    },
    waiting: waiting.length,
    trouble: unreadable || trouble,
  }
}
