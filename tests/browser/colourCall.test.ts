import { converter, differenceCiede2000 } from 'culori'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

/** What light is measured and set in, and nobody on a call should have to read. */
const TRADE = /[+−-]\d|\bstops?\b|f\/\d|\bISO\b|\bWs\b|\bkey\b|\d m\b/
const lightnessOf = (css: string) => converter('lab65')(css)!.l

describe('a colour call, from the client\'s wish to their yes and after', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let ines: BoardPage
  let tobin: BoardPage
  let pell: BoardPage
  let page: Page

  async function join(role: 'photographer' | 'assistant' | 'client', name: string): Promise<BoardPage> {
    const context = await job.newContext()
    contexts.push(context)
    return BoardPage.join(context, job.server.links[role], name, role === 'client' ? 'plain words' : 'board')
  }
  const agreed = async () => {
    await ines.page.getByRole('button', { name: 'Agree', exact: true }).click()
    await ines.page.getByRole('button', { name: /^Agreed/ }).click()
  }
  const cheekColour = () => page.getByRole('listitem').filter({ hasText: 'camera-right cheek' }).locator('.look-in-words-colour')
    .evaluate((patch) => getComputedStyle(patch).backgroundColor)
  const picture = () => page.locator('.plain-frame canvas[data-picture="drawn"]').first().evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL())

  beforeAll(async () => {
    [ines, tobin, pell] = await Promise.all([join('photographer', 'Ines'), join('assistant', 'Tobin'), join('client', 'Pell')])
    page = pell.page
    await Promise.all([ines, tobin, pell].map((each) => each.live()))
    await page.locator('.plain-frame canvas[data-picture="drawn"]').waitFor()
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  it('opens on the picture in plain words, with nothing that could move a light', async () => {
    expect(await page.locator('.client-face').innerText()).not.toMatch(TRADE)
    await page.getByText(/(purple|violet) on the camera-right cheek/i).waitFor()
    expect(await page.getByRole('slider').count() + await page.locator('[data-thing], [data-light]').count()).toBe(0)
    expect(await page.getByRole('button', { name: 'Yes…' }).count()).toBe(0)
    expect(await axeFaults(page, '.client-face')).toEqual([])
  })

  it('takes a question on the look, which the photographer sees unread, answers with a denser violet, and the picture follows', async () => {
    const [colour, frame] = [await cheekColour(), await picture()]
    await page.getByRole('button', { name: 'Question' }).click()
    await page.getByLabel('Your question').fill('Could it be a bit more plum?')
    await page.getByRole('button', { name: 'Ask', exact: true }).click()
    const inesNotes = ines.page.getByRole('button', { name: /^Notes/ })
    await inesNotes.filter({ hasText: '1 unread' }).click()
    await ines.page.getByRole('button', { name: /Could it be a bit more plum\?/ }).click()
    const thread = ines.page.getByRole('article', { name: 'Note 1' })
    await thread.getByText('the whole look').waitFor()
    await thread.getByLabel('Reply to note 1').fill('A denser violet is on')
    await thread.getByRole('button', { name: 'Reply' }).click()
    await thread.getByRole('button', { name: 'Answered' }).click()
    await ines.page.getByRole('button', { name: 'Put away' }).click()

    await ines.ladder('C').click()
    await ines.page.getByRole('button', { name: 'Details' }).click()
    await ines.page.getByRole('button', { name: 'Take Violet off' }).click()
    await ines.page.getByRole('button', { name: 'Gel', exact: true }).click()
    await ines.page.getByRole('dialog', { name: 'Gel Drawer' }).getByRole('button', { name: /^Deep violet/ }).click()
    await page.getByRole('button', { name: /^Notes/ }).filter({ hasText: '1 unread' }).waitFor()
    // A denser sheet of the same hue lets less light through; seen by another library, the colour has visibly changed.
    await expect.poll(async () => lightnessOf(await cheekColour())).toBeLessThan(lightnessOf(colour) - 1)
    expect(differenceCiede2000()(colour, await cheekColour())).toBeGreaterThan(2)
    await expect.poll(picture).not.toBe(frame)
    // A short press looks back until the next.
    const before = page.getByRole('button', { name: 'Before' })
    await before.click()
    await page.locator('.frame-print[data-before="true"]').waitFor()
    await before.click()
    await page.locator('.frame-print[data-before="false"]').waitFor()
  })

  it('"That one" is meant, locked, and said yes to with what is known of the screen', async () => {
    await page.getByRole('button', { name: 'That one' }).click()
    await agreed()
    await ines.page.getByRole('button', { name: /^Look at what Pell meant/ }).waitFor()
    await ines.page.getByRole('button', { name: /^Lock Look 1/ }).click()
    const card = ines.page.getByRole('article', { name: 'Lock 1' })
    await page.getByText('Ines has locked this picture and asks for your yes.').waitFor()
    await page.getByRole('button', { name: 'Yes…' }).click()
    await page.getByText('This screen has not been checked, and the yes will say so.').waitFor()
    expect(await axeFaults(page, '.client-face')).toEqual([])
    await page.getByRole('button', { name: 'Yes', exact: true }).click()
    await page.getByText('You said yes to this picture.').waitFor()
    await card.getByText('said yes').filter({ hasText: 'screen not checked' }).filter({ hasText: 'Pell' }).waitFor()
    expect(await page.getByRole('button', { name: 'Yes…' }).count()).toBe(0)
  })

  it('what the assistant changes after is told without stops: a hair as no visible change, more as asking again', async () => {
    await tobin.tape('C').focus()
    await tobin.page.keyboard.press('ArrowLeft')
    await page.getByText('No visible change. You will not be asked again.').waitFor()
    await tobin.stepPower('C', 9)
    await page.getByText('The picture has changed by more than was agreed. You will be asked again.').waitFor()
    const changes = page.getByRole('list', { name: 'Changed since lock 1' })
    expect(await changes.getByRole('listitem').first().innerText()).toMatch(/^the light on the shadow side is brighter: visible/i)
    expect(await page.locator('.client-face').innerText()).not.toMatch(TRADE)
    await page.getByRole('button', { name: 'All that was agreed' }).click()
    const all = page.getByRole('list', { name: 'Since lock 1' })
    await all.getByText('the light on the shadow side is brighter').waitFor()
    await expect.poll(() => all.innerText(), { timeout: 20_000 }).toMatch(/not visible\s+the light on the shadow side has moved/)
    expect(await all.innerText()).not.toMatch(TRADE)
    await page.keyboard.press('Escape')
  })

  it('looks with the photographer and sees where they point, and has the board when handed the pen', async () => {
    await page.getByRole('button', { name: /here$/ }).click()
    await page.getByRole('button', { name: 'Look with Ines' }).click()
    await page.keyboard.press('Escape')
    await ines.page.keyboard.press('Escape')
    const frame = (await ines.page.locator('.frame-print').boundingBox())!
    await ines.page.mouse.move(frame.x + frame.width * 0.3, frame.y + frame.height * 0.4)
    await page.locator('.frame-pointer-name').filter({ hasText: 'Ines' }).waitFor()
    await ines.page.getByRole('button', { name: /^Look: / }).click()
    await ines.page.getByRole('button', { name: 'Look 2, First light', exact: true }).click()
    await page.getByRole('button', { name: /^Look: Look 2, First light/ }).waitFor()
    await page.getByRole('button', { name: 'Stop', exact: true }).click()
    await ines.page.getByRole('button', { name: /here$/ }).click()
    await ines.page.getByRole('button', { name: 'Hand over the pen to Pell' }).click()
    await page.getByRole('button', { name: 'Open the board' }).click()
    await pell.ladder('A').waitFor()
    await page.getByRole('button', { name: 'Plain words' }).click()
    await page.getByRole('button', { name: 'Show the numbers' }).waitFor()
    expect(await page.getByRole('region', { name: 'Stop Ladder' }).count()).toBe(0)
  })

  it('is for one thumb on a phone', async () => {
    await page.setViewportSize(PHONE.viewport)
    await page.locator('.plain-frame canvas[data-picture="drawn"]').waitFor()
    expect(await axeFaults(page, '.client-face')).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.viewport.width)
    const buttons = page.getByRole('group', { name: 'What you can say' }).getByRole('button')
    for (const box of await buttons.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON() as DOMRect))) {
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44)
      expect(box.top).toBeGreaterThan((PHONE.viewport.height * 2) / 3)
    }
    expect([ines.troubles, tobin.troubles, pell.troubles]).toEqual([[], [], []])
  })
})
