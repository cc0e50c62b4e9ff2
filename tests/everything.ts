/**
 * `npm test`: types, lint and every project of checks, on two cores. What uses one core runs beside what uses another;
 * what uses both runs alone. At the first that fails nothing more is begun; says which, and how long each took.
 */
import { spawn } from 'node:child_process'

type Step = readonly [name: string, command: string, ...args: string[]]

const checks = (name: string, project: string, ...args: string[]): Step =>
  [name, 'vitest', 'run', '--config', 'tests/vitest.config.ts', '--project', project, ...args]

/** Rounds one after another, the lanes of a round beside each other, the steps of a lane one after another. */
const rounds: readonly (readonly (readonly Step[])[])[] = [
  [
    [
      ['types', 'tsc', '--noEmit'],
      ['lint', 'eslint', '.', '--max-warnings', '0'],
      ['client build', 'vite', 'build', '--config', 'client/vite.config.ts', '--logLevel', 'warn'],
      checks('PostgreSQL and relays that share it', 'postgres'),
    ],
    [checks('relay, store and command line', 'server')],
  ],
  // Pure computing: both cores do it, where vitest would leave one of two free.
  [[checks('core and reference checks', 'core', '--maxWorkers', '2')]],
  [[checks('real browser', 'browser')]],
]

let failed = false

for (const lanes of rounds) {
  await Promise.all(lanes.map(async (steps) => {
    for (const step of steps) {
      if (failed) return
      failed = !(await passes(step, lanes.length === 1)) || failed
    }
  }))
  if (failed) process.exit(1)
}

/** Runs a step; alone it is heard as it goes, beside another its words are kept together until it ends. */
async function passes([name, command, ...args]: Step, isAlone: boolean): Promise<boolean> {
  const startedMs = Date.now()
  if (isAlone) console.log(`\n── ${name}`)
  const child = spawn('npx', ['--no-install', command, ...args], { stdio: isAlone ? 'inherit' : ['ignore', 'pipe', 'pipe'] })
  const words: Buffer[] = []
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (chunk: Buffer) => words.push(chunk))
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject)
    child.once('close', resolve)
  })
  if (!isAlone) process.stdout.write(`\n── ${name}\n${Buffer.concat(words).toString()}`)
  const seconds = ((Date.now() - startedMs) / 1000).toFixed(1)
  if (code === 0) console.log(`── ${name}: fine, ${seconds} s`)
  else console.error(`\n── ${name} failed after ${seconds} s`)
  return code === 0
}
