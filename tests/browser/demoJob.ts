import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import { launchChromium } from './chromium.ts'
import { startServer, type RunningServer } from './runningServer.ts'

export const LAPTOP = { viewport: { width: 1440, height: 900 } } as const satisfies BrowserContextOptions
export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const satisfies BrowserContextOptions

export interface DemoJob {
  /** There from the first `beforeAll` after `demoJob()` on. */
  readonly server: RunningServer
  /** A cookie jar and storage of its own, as one person's machine has. */
  newContext(as?: BrowserContextOptions): Promise<BrowserContext>
}

/** A browser and a server with the demo job of its own, for all checks of the `describe` it is called in; both end with them. */
export function demoJob(): DemoJob {
  let browser: Browser | undefined
  let server: RunningServer | undefined
  beforeAll(async () => {
    browser = await launchChromium()
    server = await startServer()
  })
  afterAll(async () => {
    await browser?.close()
    await server?.stop()
  })
  return {
    get server() {
      return server!
    },
    newContext: (as = LAPTOP) => browser!.newContext(as),
  }
}
