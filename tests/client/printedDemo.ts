import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { encode } from 'fast-png'
import { canonicalJson } from '../../shared-core/notes/canonical.ts'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { pictureHeight } from '../../shared-core/predict/pictureText.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { openPress, type FontFiles, type Press } from '../../client/print/pdf.ts'
import type { PrintedLook, PrintJob } from '../../client/print/printJob.ts'
import type { Paper, PrintedPicture } from '../../client/print/paper.ts'
import { sheetsOf } from '../../client/print/sheets.ts'

const require = createRequire(import.meta.url)
const fontFile = (path: string): Uint8Array => readFileSync(require.resolve(`@expo-google-fonts/ibm-plex-sans/${path}`))

export const fontFiles: FontFiles = { regular: fontFile('400Regular/IBMPlexSans_400Regular.ttf'), bold: fontFile('700Bold/IBMPlexSans_700Bold.ttf') }

export const PRINTED_AT = 'https://set.example:4200'
export const PRINTED_JOB = 'Jq3vX0b7Zk1mPw9sT2uY5a'

/** A picture of no look, at the look's crop: what is checked is where it lies, and that colour stays inside it. */
function anyPicture(widthPixels: number, heightPixels: number): PrintedPicture {
  const data = Uint8Array.from({ length: widthPixels * heightPixels * 3 }, (_, i) => (i * 7) % 256)
  return { format: 'png', bytes: encode({ width: widthPixels, height: heightPixels, data, channels: 3, depth: 8 }) }
}

/** The demo's look, or one made of it, as it is printed. */
export function printedLook(plan: Plan, lookId: string, lockNumber: number | null): PrintedLook {
  const look = plan.looks[lookId]!
  const prediction = createPredictor()(plan, lookId)
  const picture = anyPicture(30, pictureHeight(look, 30))
  return {
    plan, lookId, look, prediction,
    state: {
      lockNumber, planHash: sha256(canonicalJson(plan)),
      words: lockNumber === null ? ['Nobody has agreed to this state.'] : ['Locked by Ines Corvalho-Reed, 24 Nov 18:02.', 'Yes: Pell Oduya, 24 Nov 18:09: if the print matches.'],
    },
    frame: picture,
    singles: Object.fromEntries(prediction.lights.filter(({ on }) => on).map(({ id }) => [id, picture])),
    triggers: { A: { group: 'A', channel: '12' } },
    matters: Object.fromEntries(prediction.lights.map(({ id }) => [id, ['distance ±3 cm', 'power ±0.2 stop', 'tilt ±10°', 'height ±8 cm']])),
  }
}

export function printJobOf(looks: readonly PrintedLook[], more: Partial<PrintJob> = {}): PrintJob {
  return {
    format: 'a4', units: 'metric', jobId: PRINTED_JOB, jobTitle: looks[0]!.plan.title, origin: PRINTED_AT,
    printedWords: '25 Nov 2026, 22:13 by Ines Corvalho-Reed', looks, ...more,
  }
}

export interface Printed {
  readonly papers: readonly Paper[]
  readonly pdf: Uint8Array
}

export async function printed(job: PrintJob): Promise<Printed> {
  const press: Press = await openPress(fontFiles)
  const papers = sheetsOf(job, press.letters)
  return { papers, pdf: await press.print(papers, job.jobTitle) }
}

export { demoLookId, demoPlan }
