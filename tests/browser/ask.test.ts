import axe from 'axe-core'
import type { BrowserContext, Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { demoJob, LAPTOP, PHONE } from './demoJob.ts'

const marker = (page: Page, areaId: string): Locator => page.locator(`.ladder [data-area="${areaId}"]`)
const panelOf = (page: Page): Locator => page.getByRole('complementary', { name: 'Ask', exact: true })
const chip = (page: Page, words: string): Locator => panelOf(page).getByRole('list', { name: 'Wanted together' }).getByText(words, { exact: true })

/** The level a marker says, in stops. */
async function levelAt(page: Page, areaId: string): Promise<number> {
  const text = (await marker(page, areaId).getAttribute('aria-valuetext'))!
  return Number(/^([+−]?\d+\.\d) stops/.exec(text)![1]!.replace('−', '-'))
}

async function faultsIn(page: Page, place: string): Promise<readonly string[]> {
  await page.evaluate(axe.source)
  return page.evaluate(async (selector) => {
    const { axe: loaded } = globalThis as unknown as { axe: typeof axe }
    return (await loaded.run(selector)).violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes[0]?.html})`)
  }, place)
}

describe('asking on the board', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let page: Page
  beforeAll(async () => {
    context = await job.newContext(LAPTOP)
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    page = ines.page
    await ines.live()
  })
  afterEach(async () => {
    expect(ines.troubles).toEqual([])
    if (!page.isClosed()) await ines.leaveAsk()
  })
  afterAll(async () => {
    await context?.close()
  })

  it('words are answered with ways; looking at one changes nothing until it is applied, and undo takes it back', async () => {
    await page.keyboard.press('/')
    const line = panelOf(page).getByLabel('Ask for')
    await line.fill('six apples')
    await line.press('Enter')
    await panelOf(page).getByText(/was not understood/).waitFor()

    const before = await ines.numbers('D')
    await line.fill('D -1.5')
    await line.press('Enter')
    const preview = page.getByRole('button', { name: /^Preview: / }).first()
    await preview.waitFor()
    await panelOf(page).getByText(/D −1\.5 \(wanted −1\.5\)$/).first().waitFor()
    await preview.press('Enter')
    await ines.numbersAfter('D', before)
    expect(await faultsIn(page, '.ask-panel')).toEqual([])
    await page.keyboard.press('Escape')
    await ines.untilNumbers('D', before)
    await page.getByRole('button', { name: /^Apply: / }).first().press('Enter')
    await ines.numbersAfter('D', before)
    await panelOf(page).waitFor({ state: 'detached' })
    await ines.undo()
    await ines.untilNumbers('D', before)
  })

  it('says what binds, or how near the end it is; wants are taken out one by one, and a changed look has to be asked again', async () => {
    await page.keyboard.press('/')
    const line = panelOf(page).getByLabel('Ask for')
    await line.fill('f/11, iso 100')
    await line.press('Enter')
    // f/8 to f/11 and ISO 200 to 100 are a stop each (ISO 2720): B's 250 of 1000 J are just enough, C's 218 leave 0.2.
    await panelOf(page).getByText('It can be done, only just: B has 0.0 stop in hand, C has 0.2 stop in hand.').waitFor()
    await panelOf(page).getByRole('button', { name: 'Take out ISO 100' }).click()
    await panelOf(page).getByText('It can be done.').waitFor()
    await line.fill('C +1.5')
    await line.press('Enter')
    await panelOf(page).getByText(/^C is out of power by \d\.\d stops?\. Powers alone do not do it/).waitFor()
    await ines.stepPower('D', 1)
    await panelOf(page).getByText('The look has changed since.').waitFor()
    expect(await page.getByRole('button', { name: /^Apply: / }).count()).toBe(0)
    await panelOf(page).getByRole('button', { name: 'Ask again' }).click()
    await page.getByRole('button', { name: /^Apply: / }).first().waitFor()
    await ines.undo()
  })

  it('an area’s marker is pulled by the mouse: the board follows, Escape puts back, what is dropped is offered and applied', async () => {
    const before = await ines.numbers('B')
    const was = await levelAt(page, 'jaw-right')
    const pull = async (): Promise<void> => {
      const box = (await marker(page, 'jaw-right').locator('.ladder-grip').boundingBox())!
      await page.mouse.move(box.x + 20, box.y + 9)
      await page.mouse.down()
      await page.mouse.move(box.x + 20, box.y - 15, { steps: 4 })
      await page.mouse.move(box.x + 20, box.y - 30, { steps: 4 })
    }
    await pull()
    await page.getByText(new RegExp(`^jaw R: .* wanted, now ${was > 0 ? '\\+' : '.?'}${Math.abs(was).toFixed(1)}$`)).waitFor()
    await ines.numbersAfter('B', before)
    await page.keyboard.press('Escape')
    await ines.untilNumbers('B', before)
    await page.mouse.up()
    expect(await panelOf(page).count()).toBe(0)

    await pull()
    await page.mouse.up()
    const taken = panelOf(page).getByRole('button', { name: /^Take out camera-right jaw/ })
    const wanted = Number(/\+(\d\.\d)/.exec((await taken.getAttribute('aria-label'))!)![1])
    expect(wanted).toBeGreaterThan(was + 0.5)
    await page.getByRole('button', { name: /^Preview: / }).first().waitFor()
    await panelOf(page).locator('[aria-pressed="true"]').waitFor()
    await page.getByRole('button', { name: /^Apply: / }).first().click()
    await panelOf(page).waitFor({ state: 'detached' })
    // A head's step of a tenth leaves half of one.
    expect(Math.abs((await levelAt(page, 'jaw-right')) - wanted)).toBeLessThanOrEqual(0.11)
    await ines.undo()
    await ines.untilNumbers('B', before)
  })

  it('the same by keys: arrows pull, Enter asks, Escape leaves; a number is typed where the marker hangs', async () => {
    const before = await ines.numbers('A')
    const nose = marker(page, 'nose')
    await nose.focus()
    await page.keyboard.press('Shift+ArrowDown')
    await page.keyboard.press('ArrowDown')
    await ines.numbersAfter('A', before)
    expect(await nose.getAttribute('aria-valuetext')).toMatch(/^−0\.4 wanted, now 0\.0 stops/)
    await page.keyboard.press('Escape')
    await ines.untilNumbers('A', before)

    await page.keyboard.press('-')
    await page.keyboard.type('1')
    expect(await faultsIn(page, '.ladder')).toEqual([])
    await page.keyboard.press('Enter')
    await chip(page, 'nose −1.0').waitFor()
    await page.getByRole('button', { name: /^Apply: / }).first().waitFor()
    await ines.numbersAfter('A', before)
    await page.keyboard.press('Escape')
    await ines.untilNumbers('A', before)
    await page.keyboard.press('Escape')
    await panelOf(page).waitFor({ state: 'detached' })

    await nose.focus()
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('Enter')
    await chip(page, 'nose +0.1').waitFor()
  })

  it('who may only look sees nothing to pull and nothing to ask with', async () => {
    // Nobody looks at the photographer's board any more.
    await page.close()
    const saskia = await BoardPage.join(await job.newContext(LAPTOP), job.server.links.client, 'Saskia')
    const { page: hers } = saskia
    await saskia.live()
    expect(await marker(hers, 'nose').getAttribute('role')).toBe('button')
    expect(await hers.getByRole('button', { name: 'Ask', exact: true }).count()).toBe(0)
    await hers.keyboard.press('/')
    const box = (await marker(hers, 'nose').locator('.ladder-grip').boundingBox())!
    await hers.mouse.move(box.x + 20, box.y + 9)
    await hers.mouse.down()
    await hers.mouse.move(box.x + 20, box.y - 40, { steps: 4 })
    await hers.mouse.up()
    expect(await hers.locator('.ladder-pulled').count()).toBe(0)
    expect(await panelOf(hers).count()).toBe(0)
    await hers.context().close()
  })

  it('on a phone a thumb pulls the marker, and Ask is a sheet above the flips', async () => {
    const context = await job.newContext(PHONE)
    const page = await context.newPage()
    await page.goto(job.server.links.photographer)
    await page.getByLabel('Your name').fill('Ines')
    await page.getByRole('button', { name: 'Come in' }).tap()
    await page.getByRole('button', { name: 'Ladder', exact: true }).tap()
    await page.getByText('Live', { exact: true }).waitFor()
    const box = (await marker(page, 'nose').locator('.ladder-grip').boundingBox())!
    const thumb = await context.newCDPSession(page)
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', upPixels: number) =>
      thumb.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: box.x + 20, y: box.y + 24 - upPixels }] })
    await touch('touchStart', 0)
    for (const pixels of [10, 20, 30, 40]) await touch('touchMove', pixels)
    await page.getByText(/^nose: \+\d\.\d wanted, now 0\.0$/).waitFor()
    await touch('touchEnd', 40)
    await page.getByRole('button', { name: /^Preview: / }).first().waitFor()
    const sheet = (await panelOf(page).boundingBox())!
    const flips = (await page.getByRole('navigation', { name: 'Flips' }).boundingBox())!
    expect(sheet.width).toBe(390)
    expect(sheet.y).toBeGreaterThan(844 * 0.2)
    expect(sheet.y + sheet.height).toBeLessThanOrEqual(flips.y + 1)
    expect(await faultsIn(page, '.ask-panel')).toEqual([])
    await page.getByRole('button', { name: 'Close Ask' }).tap()
    await panelOf(page).waitFor({ state: 'detached' })
  })
})
