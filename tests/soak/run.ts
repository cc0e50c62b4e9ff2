/**
 * `npm run soak`: what takes too long for `npm test`. Relays killed 25 times while eight people edit, on a file and on
 * PostgreSQL; a database gone for 20 s; what sharing a database costs; 200 runs of ten people on two relays with wires that lose, double and reorder.
 * `-- --only kills|outage|convergence|sharing` does one of them, `-- --runs 5` and `-- --kills 3` fewer, `-- --from 17` starts at
 * that run, to look at one that failed.
 */
import { parseArgs } from 'node:util'
import { freshDatabase, startDatabase } from '../postgres/database.ts'
import { converge } from './convergence.ts'
import { killWhileEditing, type KillFigures } from './kills.ts'
import { measureSharing, type SharingFigures } from './measure.ts'
import { loseDatabase } from './outage.ts'
import { relayOnFile, relaysOnDatabase } from './victims.ts'

const { values: asked } = parseArgs({
  options: {
    only: { type: 'string' }, runs: { type: 'string', default: '200' }, kills: { type: 'string', default: '25' },
    from: { type: 'string', default: '1' }, seconds: { type: 'string', default: '20' },
  },
})
/** Runs of the convergence check at once: each mostly waits. */
const TOGETHER = 4

async function soak(): Promise<void> {
  const database = await startDatabase({ waitsForDisk: true })
  try {
    if (isAsked('kills')) await soakKills(database.url)
    if (isAsked('outage')) {
      const { edits, toldMs, landedMs } = await loseDatabase(await freshDatabase(database.url), Number(asked.seconds))
      say(`database gone for ${asked.seconds} s: told after ${toldMs.toFixed(0)} ms; all ${edits} edits landed ${landedMs.toFixed(0)} ms after its return`)
    }
    if (isAsked('sharing')) saySharing(await measureSharing(await freshDatabase(database.url)))
    if (isAsked('convergence')) await soakConvergence(await freshDatabase(database.url))
  } finally {
    await database.stop()
  }
}

async function soakKills(databaseUrl: string): Promise<void> {
  const kills = Number(asked.kills)
  const run = Number(asked.from)
  const onFile = await relayOnFile()
  sayKills('one relay on a file', await killWhileEditing(onFile, kills, run).finally(onFile.close))
  const onDatabase = await relaysOnDatabase(await freshDatabase(databaseUrl))
  sayKills('one of two relays on PostgreSQL', await killWhileEditing(onDatabase, kills, run).finally(onDatabase.close))
}

async function soakConvergence(databaseUrl: string): Promise<void> {
  const first = Number(asked.from)
  const runs = Number(asked.runs)
  let edits = 0
  for (let done = 0; done < runs; done += TOGETHER) {
    const together = Array.from({ length: Math.min(TOGETHER, runs - done) }, (_, index) => converge(first + done + index, databaseUrl))
    for (const figures of await Promise.all(together)) edits += figures.edits
    if ((done + TOGETHER) % 20 === 0) say(`${done + TOGETHER} runs of convergence so far`)
  }
  say(`convergence: ${runs} runs from run ${first}, ${edits} edits, everybody's document the same to the byte in each`)
}

function sayKills(what: string, { kills, edits, seen, slowestReturnMs }: KillFigures): void {
  say(`${what}, killed ${kills} times: ${edits} edits, ${seen} looked for after a kill since somebody had seen them, 0 lost, 0 holes; ` +
    `everybody back within ${slowestReturnMs.toFixed(0)} ms`)
}

function saySharing({ seenHere, seenThere, updatesPerSecond, bytesPerUpdate }: SharingFigures): void {
  say(`a lone edit is seen on the same relay after ${seenHere.median.toFixed(1)} ms (p99 ${seenHere.p99.toFixed(1)}), ` +
    `on the other after ${seenThere.median.toFixed(1)} ms (p99 ${seenThere.p99.toFixed(1)}); ` +
    `one store keeps ${updatesPerSecond.toFixed(0)} small updates a second, ${bytesPerUpdate.toFixed(0)} bytes each`)
}

function isAsked(part: string): boolean {
  return asked.only === undefined || asked.only === part
}

function say(line: string): void {
  console.log(line)
}

const startedMs = performance.now()
soak().then(
  () => {
    say(`soak: fine, ${((performance.now() - startedMs) / 1_000).toFixed(0)} s`)
    process.exit(0)
  },
  (thrown: unknown) => {
    console.error(thrown instanceof Error ? thrown.stack : thrown)
    process.exit(1)
  },
)
