import { spawn, type ChildProcess } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const PROJECT_FOLDER = fileURLToPath(new URL('../..', import.meta.url))

export interface RelayProcess {
  readonly port: number
  /** Resolves once the process is gone. */
  end(signal: 'SIGKILL' | 'SIGTERM'): Promise<void>
}

/** None outlives who started it. */
const children = new Set<ChildProcess>()
process.once('exit', () => children.forEach((child) => child.kill('SIGKILL')))

/** The relay as a process of its own, on a free port. Rejects with its output when it does not open. */
export function startRelayProcess(environment: Record<string, string>): Promise<RelayProcess> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/start.ts', '--no-build'], {
    cwd: PROJECT_FOLDER, env: { ...process.env, PORT: '0', LOG_LEVEL: 'none', ...environment }, stdio: ['ignore', 'pipe', 'pipe'],
  })
  children.add(child)
  const gone = new Promise<void>((resolve) => child.once('exit', () => {
    children.delete(child)
    resolve()
  }))
  return new Promise((resolve, reject) => {
    let output = ''
    const hear = (text: Buffer) => {
      output += text.toString()
      const port = /Halfstop is open: http:\/\/[^:]+:(\d+)\//.exec(output)?.[1]
      if (port === undefined || !output.includes('Stop with')) return
      resolve({
        port: Number(port),
        end: (signal) => {
          child.kill(signal)
          return gone
        },
      })
    }
    child.stdout.on('data', hear)
    child.stderr.on('data', hear)
    void gone.then(() => reject(new Error(`the relay ended:\n${output}`)))
  })
}
