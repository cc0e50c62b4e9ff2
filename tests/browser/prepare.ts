import { existsSync } from 'node:fs'
import { spawnSync } from 'node:child_process'
import { startServer } from './runningServer.ts'

/**
 * Once before the browser checks: unpacks the browser (so that workers starting together do not race for it), builds
 * the page if nobody has, and starts the server on which every check has a job of its own.
 */
export default async function prepare(): Promise<() => Promise<void>> {
  process.env['CHROME_PATH'] ??= await unpackedChromium()
  if (!existsSync('dist/client/index.html')) {
    // As people get it: under the checks' own NODE_ENV it would be a page under development, slower and never kept on the device.
    const env = { ...process.env, NODE_ENV: 'production' }
    const built = spawnSync('npx', ['--no-install', 'vite', 'build', '--config', 'client/vite.config.ts', '--logLevel', 'warn'], { stdio: 'inherit', env })
    if (built.status !== 0) throw new Error('the client does not build, so there is no page to check')
  }
  const server = await startServer({ env: { NEW_JOBS_PER_HOUR: '1000' } })
  process.env['CHECKS_ORIGIN'] = server.origin
  return server.stop
}

async function unpackedChromium(): Promise<string> {
  const { default: chromium } = await import('@sparticuz/chromium')
  return chromium.executablePath()
}
