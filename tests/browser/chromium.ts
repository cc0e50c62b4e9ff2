import { chromium, type Browser } from 'playwright-core'

let shared: Promise<Browser> | undefined

/** One browser for every file of a worker; it ends with the worker, whose pipe to it then closes. Each context is a machine of its own. */
export function sharedChromium(): Promise<Browser> {
  return shared ??= launchChromium()
}

/** The browser that `prepare.ts` unpacked, or the one CHROME_PATH names. */
export async function launchChromium(): Promise<Browser> {
  const executablePath = process.env['CHROME_PATH']
  if (!executablePath) throw new Error('CHROME_PATH is not set: run browser checks through tests/vitest.config.ts')
  return chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  })
}
