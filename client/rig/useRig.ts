import { createContext, use } from 'react'
import { useStore } from 'zustand'
import type { RigBoard, RigStore } from './engine/openRig.ts'

/** What is kept of the day, of the job that the page is showing. */
export const RigContext = createContext<RigStore | null>(null)

/** The store itself, for handlers: `rig.getState().write(edits)`. Throws outside a job. */
export function useRigStore(): RigStore {
  const store = use(RigContext)
  if (store === null) throw new Error('useRig is for components inside an open job')
  return store
}

/** What a component draws of the day; it draws again only when that part changes. Select single fields. */
export function useRig<Part>(selector: (board: RigBoard) => Part): Part {
  return useStore(useRigStore(), selector)
}
