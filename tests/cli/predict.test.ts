import { execFile } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { decode } from 'fast-png'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { writeJobFile } from '../../shared-core/plan/read.ts'
import { predict } from '../../shared-core/predict/predict.ts'

interface Outcome {
  readonly code: number
  readonly out: string
  readonly complaints: string
}

function run(...args: string[]): Promise<Outcome> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['--import', 'tsx', 'server/cli/predict.ts', ...args], { maxBuffer: 50_000_000 }, (error, out, complaints) => {
      resolve({ code: error === null ? 0 : Number(error.code), out, complaints })
    })
  })
}

const toTwelveDigits = (prediction: unknown): unknown =>
  JSON.parse(JSON.stringify(prediction), (_, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(12)) : value))

const folder = mkdtempSync(join(tmpdir(), 'halfstop-cli-'))

describe('the predict command', () => {
  it('prints what the core predicts, for a saved job and a look by place or name', async () => {
    const file = join(folder, 'job.json')
    writeFileSync(file, writeJobFile(demoPlan))
    const [first, third, named] = await Promise.all([run(file), run(file, '--look', '3'), run(file, '--look', 'Look 2, First light')])
    expect(JSON.parse(first.out)).toEqual(toTwelveDigits(predict(demoPlan, 'dusk')))
    expect(JSON.parse(third.out)).toEqual(toTwelveDigits(predict(demoPlan, 'first-light')))
    expect(named.out).toBe(third.out)
  })

  it('prints the f-numbers of whole stops from f/1 on as they are: 1, 2, 4 and so on', async () => {
    const apertures = [2, 4, 8, 16]
    const outcomes = await Promise.all(apertures.map((fNumber) => {
      const file = join(folder, `f${fNumber}.json`)
      const look = demoPlan.looks['dusk']!
      writeFileSync(file, writeJobFile({ ...demoPlan, looks: { ...demoPlan.looks, dusk: { ...look, camera: { ...look.camera, fNumber } } } }))
      return run(file)
    }))
    expect(outcomes.map(({ out }) => (JSON.parse(out) as { taking: { fNumber: number } }).taking.fNumber)).toEqual(apertures)
  })

  it('refuses a broken file with exit code 2 and a path for each problem', async () => {
    const file = join(folder, 'broken.json')
    const broken = JSON.parse(writeJobFile(demoPlan)) as { looks: { dusk: { camera: { fNumber: unknown }; lights: { a: { headId: string } } } } }
    broken.looks.dusk.camera.fNumber = 'eight'
    writeFileSync(file, JSON.stringify(broken))
    const outcome = await run(file)
    expect([outcome.code, outcome.out]).toEqual([2, ''])
    expect(outcome.complaints).toMatch(/^looks\.dusk\.camera\.fNumber: /m)
    for (const bad of [[join(folder, 'nothing.json')], [], ['--demo', '--look', '99'], ['--demo', '--width', 'wide'], ['--never']]) {
      expect((await run(...bad)).code, bad.join(' ')).toBe(2)
    }
  })

  it('draws the Frame at the camera’s crop and says in the file what it is', async () => {
    const file = join(folder, 'frame.png')
    expect((await run('--demo', '--frame', file, '--width', '48')).code).toBe(0)
    const png = decode(readFileSync(file))
    // 24 x 36 upright: three high for two wide.
    expect([png.width, png.height]).toEqual([48, 72])
    expect(png.text['Title']).toBe(`${demoPlan.title}: ${demoPlan.looks['dusk']!.name}`)
    expect(png.text['Comment']).toContain('f/8; 1/160; ISO 200; 5500 K')
    expect(new Set(png.data).size).toBeGreaterThan(20)
  })
})
