import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export interface RunningServer {
  readonly origin: string
  readonly port: number
  readonly dataDir: string
  /** The demo job's three secret links. */
  readonly links: Readonly<Record<'photographer' | 'assistant' | 'client', string>>
  /** Ends it as a power cut of the process would: nothing is saved on the way out. */
  kill(): Promise<void>
  stop(): Promise<void>
}

/** `npm start` in a process of its own, as people run it, on a free port and a data folder of its own. */
export async function startServer(options: { dataDir?: string; port?: number; env?: Readonly<Record<string, string>> } = {}): Promise<RunningServer> {
  const dataDir = options.dataDir ?? mkdtempSync(join(tmpdir(), 'halfstop-'))
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/start.ts', '--no-build'], {
    env: { ...process.env, PORT: String(options.port ?? 0), DATA_DIR: dataDir, LOG_LEVEL: 'warn', ...options.env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const text = await textUntil(child, 'Stop with Ctrl+C')
  const origin = /Halfstop is open: (\S+?)\/?\s/.exec(text)![1]!
  const link = (role: string) => new RegExp(`${role}\\s+(\\S+)`).exec(text)![1]!
  return {
    origin,
    port: Number(new URL(origin).port),
    dataDir,
    links: { photographer: link('photographer'), assistant: link('assistant'), client: link('client') },
    kill: () => ended(child, 'SIGKILL'),
    stop: () => ended(child, 'SIGTERM'),
  }
}

function textUntil(child: ChildProcess, wanted: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = ''
    const onText = (chunk: Buffer): void => {
      text += chunk.toString()
      if (text.includes(wanted)) resolve(text)
    }
    child.stdout!.on('data', onText)
    child.stderr!.on('data', onText)
    child.once('exit', (code) => reject(new Error(`the server ended with ${code} before it opened:\n${text}`)))
  })
}

async function ended(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const exit = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  child.kill(signal)
  await exit
}
