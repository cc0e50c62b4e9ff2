import { useLayoutEffect, useState, type RefObject } from 'react'

export interface ElementSize {
  readonly widthPixels: number
  readonly heightPixels: number
}

/** The inner size of an element, kept up to date; null until it has been measured. */
export function useElementSize(element: RefObject<Element | null>): ElementSize | null {
  const [size, setSize] = useState<ElementSize | null>(null)
  useLayoutEffect(() => {
    const observed = element.current
    if (!observed) return
    const observer = new ResizeObserver(([entry]) => {
      if (!entry) return
      const { width, height } = entry.contentRect
      setSize({ widthPixels: width, heightPixels: height })
    })
    observer.observe(observed)
    return () => observer.disconnect()
  }, [element])
  return size
}
