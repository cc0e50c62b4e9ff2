import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'

export type KitDrawer = 'heads' | 'modifiers' | 'gels' | 'without'

/** Which part of the kit is open: it stays as it was left, and other parts of the page may open one. */
const kitDrawer = createStore<{ readonly drawer: KitDrawer }>()(() => ({ drawer: 'heads' }))

export function useKitDrawer(): KitDrawer {
  return useStore(kitDrawer, ({ drawer }) => drawer)
}

export function showKitDrawer(drawer: KitDrawer): void {
  kitDrawer.setState({ drawer })
}
