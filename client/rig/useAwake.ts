import { useEffect } from 'react'

/** Keeps the screen lit while a page is read with both hands full. Browsers that cannot, or may not, sleep as they like. */
export function useAwake(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | null = null
    let isOpen = true
    const hold = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return
      try {
        const held = await navigator.wakeLock.request('screen')
        if (isOpen) lock = held
        else await held.release()
      } catch {
        // Low battery, or a browser without it: the person wakes the screen by hand.
      }
    }
    void hold()
    document.addEventListener('visibilitychange', hold)
    return () => {
      isOpen = false
      document.removeEventListener('visibilitychange', hold)
      void lock?.release()
    }
  }, [])
}
