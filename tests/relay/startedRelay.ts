import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { onTestFinished } from 'vitest'
import type { Seated } from './openRelay.ts'

const PROJECT_FOLDER = fileURLToPath(new URL('../..', import.meta.url))

export interface StartedRelay {
  readonly origin: string
  /** The demo job's links as the terminal shows them, by role. */
  readonly links: Readonly<Record<string, string>>
  post(path: string, body: unknown, headers?: Record<string, string>): Promise<Response>
  /** Ends the process with a signal; resolves with its exit code once it is gone, null when the signal took it. */
  end(signal: NodeJS.Signals): Promise<number | null>
}

/** `npm start` as a process of its own, on a free port, that can be killed. Rejects with its output when it does not open. */
export function startRelay(environment: Record<string, string>): Promise<StartedRelay> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/start.ts', '--no-build'], {
    cwd: PROJECT_FOLDER, env: { ...process.env, PORT: '0', ...environment }, stdio: ['ignore', 'pipe', 'pipe'],
  })
  const gone = new Promise<number | null>((resolve) => child.once('exit', (code) => resolve(code)))
  onTestFinished(() => { child.kill('SIGKILL') })
  return new Promise((resolve, reject) => {
    let output = ''
    const hear = (text: Buffer) => {
      output += text.toString()
      if (!output.includes('Stop with')) return
      const origin = /Halfstop is open: (http:\S+)\//.exec(output)?.[1]
      const links = Object.fromEntries([...output.matchAll(/^ {2}(\w+) +(http\S+)$/gm)].map(([, role, url]) => [role, url]))
      if (origin === undefined) return reject(new Error(output))
      resolve({
        origin, links: links as Record<string, string>,
        post: (path, body, headers = {}) => fetch(`${origin}${path}`, {
          method: 'POST', body: JSON.stringify(body), headers: { 'content-type': 'application/json', ...headers },
        }),
        end: (signal) => { child.kill(signal); return gone },
      })
    }
    child.stdout.on('data', hear)
    child.stderr.on('data', hear)
    void gone.then((code) => reject(new Error(`ended with ${code}:\n${output}`)))
  })
}

/** A seat by a secret link, as a program takes it. */
export async function takeSeat(origin: string, link: string, name: string): Promise<Seated> {
  const { pathname, hash } = new URL(link)
  const response = await fetch(`${origin}/api/seats`, {
    method: 'POST', headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ jobId: pathname.split('/').at(-1), key: hash.slice(1), name, headless: true }),
  })
  return (await response.json()) as Seated
}
