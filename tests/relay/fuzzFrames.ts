/**
 * `npx tsx tests/relay/fuzzFrames.ts --minutes 10` takes messages apart for that long, each run of a thousand from a seed
 * of its own, and prints what was reached; the first that breaks a promise ends it with its seed.
 */
import { parseArgs } from 'node:util'
import fc from 'fast-check'
import { anyMessage, nothingReached, takeAnyMessage } from './frameProperties.ts'

const { values } = parseArgs({ options: { minutes: { type: 'string', default: '10' } } })
const untilMs = Date.now() + Number(values.minutes) * 60_000
const reached = nothingReached()
let messages = 0
for (let seed = 1; Date.now() < untilMs; seed++) {
  await fc.assert(fc.asyncProperty(anyMessage, async (bytes) => {
    messages += 1
    await takeAnyMessage(bytes, reached)
  }), { numRuns: 1_000, seed })
}
console.log(JSON.stringify({ messages, ...reached }))
