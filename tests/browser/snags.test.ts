import axe from 'axe-core'
import type { BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('snags on a board of three', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let tobin: BoardPage

  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    tobin = await BoardPage.join(context, job.server.links.assistant, 'Tobin')
    await Promise.all([ines.live(), tobin.live()])
  })
  afterEach(async () => {
    expect([...ines.troubles, ...tobin.troubles]).toEqual([])
  })
  afterAll(async () => {
    await context?.close()
  })

  const snags = (board: BoardPage) => board.page.getByRole('region', { name: 'Snags' })
  const accept = (board: BoardPage) => snags(board).getByRole('button', { name: /^That’s the look: Camera-right cheek: A’s clear light/ })
  const fold = (board: BoardPage) => snags(board).getByText('Accepted (1)')

  it('one accepts by keyboard, the other sees it folded with the name; undo makes it speak again', async () => {
    await accept(tobin).waitFor()
    await accept(ines).press('Enter')
    await fold(ines).waitFor()
    await fold(tobin).waitFor()
    expect(await accept(tobin).count()).toBe(0)
    expect(await snags(tobin).getByText(/Ines, /).isVisible()).toBe(false)
    await fold(tobin).click()
    await snags(tobin).getByText(/Ines, .* at \d/).waitFor()
    await tobin.page.evaluate(axe.source)
    const faults = await tobin.page.evaluate(async () => {
      const { axe: loaded } = globalThis as unknown as { axe: typeof axe }
      return (await loaded.run('.snags')).violations.map(({ id, help }) => `${id}: ${help}`)
    })
    expect(faults).toEqual([])

    // The other light's colour fades: what was accepted is worse by more than a visible step.
    await tobin.stepPower('C', -6)
    await snags(ines).getByText(/Worse than what was accepted: Ines, /).waitFor()
    await tobin.stepPower('C', 6)
    await fold(ines).waitFor()

    await ines.undo()
    await accept(tobin).waitFor()
    expect(await fold(tobin).count()).toBe(0)
  })

  it('a mend is one press and one undo, and a client without the pen has neither button', async () => {
    const saskia = await BoardPage.join(context, job.server.links.client, 'Saskia')
    await saskia.live()
    const mend = snags(ines).getByRole('button', { name: 'C to −1.7' })
    await ines.stepPower('C', 12)
    await mend.waitFor()
    const pale = await ines.numbers('C')
    await mend.press('Enter')
    await ines.numbersAfter('C', pale)
    await expect.poll(() => mend.count()).toBe(0)
    await ines.undo()
    await ines.untilNumbers('C', pale)
    await mend.waitFor()
    await snags(saskia).getByText(/colour stands at/).waitFor()
    expect(await snags(saskia).getByRole('button', { name: /^That’s the look/ }).count()).toBe(0)
    expect(saskia.troubles).toEqual([])
  })
})
