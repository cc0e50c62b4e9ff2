import { useEffect, useRef, type RefObject } from 'react'

/** Hears keys pressed anywhere inside an element, after what is focused there; for a part that is no control itself. */
export function useKeydown(element: RefObject<HTMLElement | null>, onKey: (event: KeyboardEvent) => void): void {
  const latest = useRef(onKey)
  useEffect(() => {
    latest.current = onKey
  })
  useEffect(() => {
    const heard = element.current
    const listen = (event: KeyboardEvent): void => latest.current(event)
    heard?.addEventListener('keydown', listen)
    return () => heard?.removeEventListener('keydown', listen)
  }, [element])
}
