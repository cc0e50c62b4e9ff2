import { useEffect, useId, useMemo, type ReactNode } from 'react'
import { followUnhurried } from './followUnhurried.ts'
import { UnhurriedContext } from './unhurriedContext.ts'
import { useBoardStore } from './useBoard.ts'

/** Parts of the page that follow a hand on another part a few times a second, and are exact once it rests. */
export function Unhurried({ children }: { readonly children: ReactNode }) {
  const store = useBoardStore()
  const id = useId()
  const followed = useMemo(() => followUnhurried(store, () => isUnderHand(id)), [store, id])
  useEffect(() => followed.follow(), [followed])
  return (
    <UnhurriedContext value={followed}>
      <div id={id} style={{ display: 'contents' }}>{children}</div>
    </UnhurriedContext>
  )
}

function isUnderHand(id: string): boolean {
  return document.getElementById(id)?.matches(':hover, :active, :focus-within') ?? false
}
