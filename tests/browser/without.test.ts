import axe from 'axe-core'
import type { BrowserContext, Locator } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('doing without', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let without: Locator
  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    await ines.live()
    without = ines.page.getByRole('region', { name: 'Do without', exact: true })
  })
  afterEach(async () => {
    expect(ines.troubles).toEqual([])
    await ines.leaveAsk()
  })
  afterAll(async () => {
    await context?.close()
  })

  const openKit = async (): Promise<void> => {
    const part = ines.page.getByRole('radio', { name: 'Do without…' })
    // Pressed while it is picked, the word would let go of it.
    if (!(await part.isVisible())) await ines.page.getByRole('button', { name: 'Kit', exact: true }).click()
    await part.click()
  }
  const pick = (words: string) => without.getByRole('button', { name: words, exact: true }).click()
  const answered = () => without.getByText(/^What else was tried/).waitFor()

  it('without D, from the light’s own sheet: what is lost, a look at it, one edit, one undo', async () => {
    await ines.tape('D').click()
    await ines.page.getByRole('button', { name: 'Details' }).click()
    await ines.page.getByRole('button', { name: 'Do without it' }).click()
    await pick('Without D')
    await answered()
    // One light gives nearly all there is on the paper (common practice, no source).
    await without.getByText(/^What else was tried/).click()
    const plain = without.getByRole('region', { name: 'Without D', exact: true })
    await plain.getByText(/paper falls to .+ \(−\d\.\d\)/i).waitFor()
    await plain.getByText(/moss is lost/i).waitFor()

    const before = await ines.numbers('D')
    await plain.getByRole('button', { name: 'Look at it: Without D', exact: true }).click()
    const offOnLadder = ines.page.getByRole('region', { name: 'Stop Ladder' }).getByText('off', { exact: true })
    await offOnLadder.waitFor()
    await plain.getByRole('button', { name: 'Look at it: Without D', exact: true }).press('Escape')
    await offOnLadder.waitFor({ state: 'detached' })
    await ines.untilNumbers('D', before)
    await plain.getByRole('button', { name: 'Apply: Without D', exact: true }).click()
    await ines.page.getByRole('region', { name: 'What the last edit did' }).getByText(/D off/).waitFor()
    await ines.undo()
    await ines.untilNumbers('D', before)
  })

  it('names the areas that change; and a look that has changed meanwhile is asked anew', async () => {
    await openKit()
    await pick('Two heads')
    await answered()
    expect(await without.getByRole('list', { name: 'Areas that change, the most first' }).getByRole('listitem').count()).toBeGreaterThan(0)
    await ines.page.evaluate(axe.source)
    const faults = await ines.page.evaluate(async () => {
      const { axe: loaded } = globalThis as unknown as { axe: typeof axe }
      return (await loaded.run('.without')).violations.map(({ id, help }) => `${id}: ${help}`)
    })
    expect(faults).toEqual([])
    const speed = ines.page.getByLabel('Film speed')
    await speed.fill('ISO 400')
    await speed.press('Enter')
    await without.getByText('The look has changed since.').waitFor()
    expect(await without.getByRole('button', { name: /^Apply/ }).count()).toBe(0)
    await without.getByRole('button', { name: 'Ask again' }).click()
    await answered()
    await ines.undo()
  })

  it('is reached from Ask, too', async () => {
    await ines.page.keyboard.press('/')
    await ines.page.getByRole('complementary', { name: 'Ask', exact: true }).getByRole('button', { name: 'Do without…' }).click()
    await pick('Two heads')
    await answered()
  })

  it('only a 120 in place of the octa, and a ceiling at 2.4 m', async () => {
    await openKit()
    await pick('No Octa 100')
    await answered()
    await pick('Only a 120 cm')
    await without.getByRole('region', { name: 'A in Octa 120 cm', exact: true }).waitFor()
    // 120 over 100 across the same way is seen 1.2 times as wide: softer.
    await without.getByText(/A softer: \d+° to \d+°/i).first().waitFor()
    const ceiling = without.getByLabel('Ceiling at')
    await ceiling.fill('2.4 m')
    await ceiling.press('Enter')
    await without.getByRole('region', { name: /lowered/ }).first().waitFor()
    await without.getByRole('button', { name: /^Apply: .*lowered/ }).first().click()
    await ines.page.getByText(/ × 2\.40 m/).first().waitFor()
    await ines.undo()
    await ines.page.getByText(/ × 3\.20 m/).first().waitFor()
  })

  it('a client without the pen may ask and read, and change nothing', async () => {
    const saskia = await BoardPage.join(context, job.server.links.client, 'Saskia')
    await saskia.live()
    await saskia.page.getByRole('button', { name: 'Kit', exact: true }).click()
    await saskia.page.getByRole('radio', { name: 'Do without…' }).click()
    const hers = saskia.page.getByRole('region', { name: 'Do without', exact: true })
    await hers.getByRole('button', { name: 'Three heads', exact: true }).click()
    await hers.getByText(/^What else was tried/).waitFor()
    expect(await hers.getByRole('button', { name: /^(Look at it|Apply)/ }).count()).toBe(0)
    expect(saskia.troubles).toEqual([])
  })
})
