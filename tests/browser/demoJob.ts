import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import { z } from 'zod'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { sharedChromium } from './chromium.ts'
import type { RunningServer } from './runningServer.ts'

export const LAPTOP = { viewport: { width: 1440, height: 900 } } as const satisfies BrowserContextOptions
export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const satisfies BrowserContextOptions
/** Of a device that is to keep the page for times without a network; keeping it costs as much as opening it, so others do not. */
export const KEPT = { serviceWorkers: 'allow' } as const satisfies BrowserContextOptions

export interface DemoJob {
  /** Where the job is. There from the first `beforeAll` after `demoJob()` on. */
  readonly server: Pick<RunningServer, 'origin' | 'links'>
  /** A cookie jar and storage of its own, as one person's machine has. */
  newContext(as?: BrowserContextOptions): Promise<BrowserContext>
}

const startedJob = z.object({ links: z.array(z.object({ role: z.enum(['photographer', 'assistant', 'client']), url: z.string() })) })

/** A job of the demo's plan that nobody has touched, for all checks of the `describe` it is called in, on the checks' one server. */
export function demoJob(): DemoJob {
  let browser: Browser | undefined
  let server: DemoJob['server'] | undefined
  let contexts: BrowserContext[] = []
  beforeAll(async () => {
    browser = await sharedChromium()
    server = await freshJob()
  })
  afterAll(async () => {
    // What a check leaves open would go on drawing under those after it.
    await Promise.all(contexts.map((context) => context.close()))
    contexts = []
  })
  return {
    get server() {
      return server!
    },
    newContext: async (as = LAPTOP) => {
      const context = await browser!.newContext({ serviceWorkers: 'block', ...as })
      contexts.push(context)
      return context
    },
  }
}

async function freshJob(): Promise<DemoJob['server']> {
  const origin = process.env['CHECKS_ORIGIN']
  if (!origin) throw new Error('CHECKS_ORIGIN is not set: run browser checks through tests/vitest.config.ts')
  const answer = await fetch(`${origin}/api/jobs`, {
    method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ plan: demoPlan }),
  })
  const { links } = startedJob.parse(await answer.json())
  const link = (role: string): string => links.find((each) => each.role === role)!.url
  return { origin, links: { photographer: link('photographer'), assistant: link('assistant'), client: link('client') } }
}
