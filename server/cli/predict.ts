/**
 * `npm run -s predict -- job.json [--look N]` prints a look's whole prediction as JSON: the same core as the board, without
 * a browser, its numbers to 12 significant digits. N is the look's place in the job (1 is the first), its name or its id; without it, the first.
 * `--frame out.png` writes the predicted picture too, `--width W` pixels wide at the camera's crop.
 *
 * Exit codes: 0 fine; 2 the file or the arguments are no good (each problem on a line of its own, with its path).
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { readJobFile } from '../../shared-core/plan/read.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { printed } from './printed.ts'

const USAGE = 'usage: npm run -s predict -- job.json|--demo [--look N] [--frame out.png [--width W]]'
const USUAL_WIDTH = 480
const WIDEST = 4_000

async function main(): Promise<void> {
  const { file, demo, look, frame, width } = readArguments()
  const plan = demo ? demoPlan : readPlanFile(file)
  if (frame !== undefined) {
    const { framePng } = await import('../picture/framePng.ts')
    writeFrame(frame, framePng(plan, lookIdOf(plan, look), width))
  }
  process.stdout.write(`${printed(predict(plan, lookIdOf(plan, look)))}\n`)
}

interface Arguments {
  readonly file: string
  readonly demo: boolean
  readonly look: string | undefined
  readonly frame: string | undefined
  readonly width: number
}

function readArguments(): Arguments {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        look: { type: 'string' }, demo: { type: 'boolean', default: false }, frame: { type: 'string' }, width: { type: 'string' },
      },
    })
    const width = Number(values.width ?? USUAL_WIDTH)
    if (!Number.isInteger(width) || width < 16 || width > WIDEST) fail([`--width: a whole number of pixels from 16 to ${WIDEST}`, USAGE])
    if (values.demo ? positionals.length > 0 : positionals.length !== 1) fail([USAGE])
    return { file: positionals[0] ?? '', demo: values.demo, look: values.look, frame: values.frame, width }
  } catch (error) {
    return fail([error instanceof Error ? error.message : String(error), USAGE])
  }
}

function readPlanFile(file: string): Plan {
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch {
    return fail([`${file}: cannot be read`])
  }
  const reading = readJobFile(text)
  if (!reading.ok) return fail(reading.problems.map(({ path, message }) => `${path || '(whole file)'}: ${message}`))
  for (const repair of reading.repairs) process.stderr.write(`repaired: ${repair}\n`)
  return reading.plan
}

function writeFrame(path: string, png: Uint8Array): void {
  try {
    writeFileSync(path, png)
  } catch (error) {
    fail([`${path}: cannot be written (${error instanceof Error ? error.message : String(error)})`])
  }
}

function lookIdOf(plan: Plan, asked: string | undefined): string {
  const inOrder = Object.entries(plan.looks).sort(([, a], [, b]) => a.order - b.order)
  const found = asked === undefined
    ? inOrder[0]
    : inOrder.find(([id, look], i) => id === asked || look.name === asked || String(i + 1) === asked)
  if (found) return found[0]
  const names = inOrder.map(([, look], i) => `${i + 1} ${look.name}`).join('; ')
  return fail([`looks: there is no look ${asked ?? ''}; the job has ${names || 'none'}`])
}

function fail(lines: readonly string[]): never {
  process.stderr.write(`${lines.join('\n')}\n`)
  process.exit(2)
}

await main()
