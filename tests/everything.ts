/**
 * `npm test`: types, lint and every project of checks, one after another so that two cores are enough.
 * Stops at the first that fails and says which; prints how long each took.
 */
import { spawnSync } from 'node:child_process'

// The core checks are pure computing and know nothing of one another: both cores do them, where vitest would leave one of two free.
const steps: readonly (readonly [name: string, command: string, ...args: string[]])[] = [
  ['types', 'tsc', '--noEmit'],
  ['lint', 'eslint', '.', '--max-warnings', '0'],
  ['core and reference checks', 'vitest', 'run', '--config', 'tests/vitest.config.ts', '--project', 'core', '--maxWorkers', '2'],
  ['relay, store and command line', 'vitest', 'run', '--config', 'tests/vitest.config.ts', '--project', 'server'],
  ['PostgreSQL and relays that share it', 'vitest', 'run', '--config', 'tests/vitest.config.ts', '--project', 'postgres'],
  ['client build', 'vite', 'build', '--config', 'client/vite.config.ts', '--logLevel', 'warn'],
  ['real browser', 'vitest', 'run', '--config', 'tests/vitest.config.ts', '--project', 'browser'],
]

for (const [name, command, ...args] of steps) {
  const startedMs = Date.now()
  console.log(`\n── ${name}`)
  const outcome = spawnSync('npx', ['--no-install', command, ...args], { stdio: 'inherit' })
  const seconds = ((Date.now() - startedMs) / 1000).toFixed(1)
  if (outcome.status !== 0) {
    console.error(`\n── ${name} failed after ${seconds} s`)
    process.exit(outcome.status ?? 1)
  }
  console.log(`── ${name}: fine, ${seconds} s`)
}
