import { createStore } from 'zustand/vanilla'

/** Whether this device can load the page again without a network, in words for the person. */
export interface ShellKept {
  /** Null until the browser has answered. */
  readonly kept: boolean | null
  readonly words: string
}

export const shellKept = createStore<ShellKept>()(() => ({ kept: null, words: 'Not yet known whether this page opens without a network' }))

/** Asks the browser to keep the page itself. Never throws: without it everything else still works. */
export async function keepShell(): Promise<void> {
  if (import.meta.env.DEV) return shellKept.setState({ kept: false, words: 'A page under development is not kept on the device' })
  if (!isSecureContext) {
    return shellKept.setState({ kept: false, words: 'This page cannot be opened again without a network: for that it has to come over https' })
  }
  if (!('serviceWorker' in navigator)) {
    return shellKept.setState({ kept: false, words: 'This browser cannot open the page again without a network' })
  }
  try {
    await navigator.serviceWorker.register('/service-worker.js')
    await navigator.serviceWorker.ready
    shellKept.setState({ kept: true, words: 'This page opens again without a network' })
  } catch {
    shellKept.setState({ kept: false, words: 'The browser did not keep this page for times without a network' })
  }
}
