import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { decode } from 'fast-png'
import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

/** The most by which any colour byte of two pictures differs. */
function mostApart(a: ArrayLike<number>, b: ArrayLike<number>): number {
  if (a.length !== b.length) return Infinity
  let most = 0
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i]! - b[i]!))
  return most
}

describe('same plan, same picture', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage

  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    await ines.page.locator('.frame-print canvas[data-picture="drawn"]').first().waitFor()
  })
  afterAll(async () => {
    await context?.close()
  })

  it('on the page as Node draws it, to one level', async () => {
    const { space, width, height, bytes } = await ines.page.evaluate(() => {
      const canvas = document.querySelector<HTMLCanvasElement>('.frame-print canvas[data-picture="drawn"]')!
      // Of a context that is there already, this gives the same one in its own colours.
      const context = canvas.getContext('2d')!
      const space = context.getContextAttributes().colorSpace ?? 'srgb'
      const { data } = context.getImageData(0, 0, canvas.width, canvas.height, { colorSpace: space })
      return { space, width: canvas.width, height: canvas.height, bytes: Array.from(data) }
    })
    const asset = decodeSubject(readFileSync('shared-core/subject/asset/subject.bin'))
    const fromNode = new LookPicture(asset).draw(demoPlan, 'dusk', {
      width, height, soloLightId: null, coarse: false, space: space === 'display-p3' ? 'display-p3' : 'srgb',
    })
    expect(width).toBeGreaterThan(200)
    expect(new Set(bytes).size).toBeGreaterThan(100)
    expect(mostApart(bytes, fromNode.rgba)).toBeLessThanOrEqual(1)
  })

  it('in the file the page saves as in the file the command line writes, to one level', async () => {
    await ines.page.getByRole('button', { name: 'Job' }).click()
    const [download] = await Promise.all([
      ines.page.waitForEvent('download'),
      ines.page.getByRole('button', { name: 'Save the Frame' }).click(),
    ])
    const saved = decode(readFileSync(await download.path()))
    const file = join(mkdtempSync(join(tmpdir(), 'halfstop-frame-')), 'frame.png')
    execFileSync('npx', ['--no-install', 'tsx', 'server/cli/predict.ts', '--demo', '--frame', file, '--width', String(saved.width)])
    const written = decode(readFileSync(file))
    expect([written.width, written.height]).toEqual([saved.width, saved.height])
    expect(mostApart(saved.data, written.data)).toBeLessThanOrEqual(1)
    // Another look is another picture, or the comparison would be of nothing.
    const other = new LookPicture(decodeSubject(readFileSync('shared-core/subject/asset/subject.bin')))
      .draw(demoPlan, 'first-light', { width: saved.width, height: saved.height, soloLightId: null, coarse: false })
    expect(mostApart(saved.data, other.rgba)).toBeGreaterThan(50)
  })
})
