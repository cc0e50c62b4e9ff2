import type { Locator, Page } from 'playwright-core'
import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

const LOOK_2 = 'Look 2, First light'
const region = (page: Page): Locator => page.getByRole('region', { name: 'White behind' })
const curve = (page: Page): Locator => region(page).getByRole('slider', { name: /^Push of the lights behind/ })
const textOf = async (page: Page): Promise<string> => (await curve(page).getAttribute('aria-valuetext'))!

/** A signed number of stops after some word of what the curve says; without one, the push itself. */
async function stopsOf(page: Page, word: 'rim' | '' = ''): Promise<number> {
  const found = new RegExp(`${word === '' ? '^' : `${word} `}([+−]?\\d+\\.\\d)`).exec(await textOf(page))
  return Number(found![1]!.replace('−', '-'))
}

describe('white behind', () => {
  const job = demoJob()
  let ines: BoardPage
  let page: Page
  beforeAll(async () => {
    ines = await open('photographer', 'Ines')
    page = ines.page
  })
  afterEach(() => expect(ines.troubles).toEqual([]))

  async function open(role: 'photographer' | 'client', name: string): Promise<BoardPage> {
    const board = await BoardPage.join(await job.newContext(), job.server.links[role], name)
    await board.live()
    const { page } = board
    await page.getByRole('button', { name: /^Look: .*Change look$/ }).click()
    await page.getByRole('dialog', { name: 'Looks of this job' }).getByRole('button', { name: LOOK_2, exact: true }).click()
    await page.getByRole('navigation', { name: 'The set' }).getByRole('button', { name: 'Backdrop', exact: true }).click()
    await curve(page).waitFor()
    return board
  }

  it('at just white every corner is white, a third under it none may be said to be; the rim follows the push stop for stop', async () => {
    const before = await ines.numbers('B')
    await curve(page).focus()
    await page.keyboard.press('Home')
    expect(await stopsOf(page)).toBe(0)
    expect(await textOf(page)).toContain('Every corner just white')
    const rim = await stopsOf(page, 'rim')
    // A head's step is a tenth: just white may lie up to one over what white needs.
    await page.keyboard.press('Shift+ArrowLeft')
    expect(await textOf(page)).toMatch(/^−0\.3: Worst corner lacks 0\.[23]/)
    await page.keyboard.press('Shift+ArrowRight')
    await page.keyboard.press('Alt+ArrowRight')
    // What wraps comes from behind alone: a stop more power is a stop more of it (additivity of light).
    expect(await stopsOf(page, 'rim')).toBeCloseTo(rim + 1, 1)
    await ines.numbersAfter('B', before)
    await page.keyboard.press('Escape')
    await ines.untilNumbers('B', before)
    expect(await axeFaults(page, '.white')).toEqual([])
  })

  it('is dragged along by the mouse, the Frame following; let go of it is one edit, and one undo', async () => {
    const [b, d] = [await ines.numbers('B'), await ines.numbers('D')]
    const background = page.getByRole('region', { name: 'Frame' })
    const white = await background.screenshot()
    const box = (await curve(page).boundingBox())!
    await page.mouse.move(box.x + box.width / 2, box.y + 80)
    await page.mouse.down()
    await page.mouse.move(box.x + 40, box.y + 80, { steps: 5 })
    await ines.numbersAfter('B', b)
    expect(await textOf(page)).toMatch(/Worst corner lacks 2\.\d|Worst corner lacks 3\.0/)
    await expect.poll(async () => (await background.screenshot()).equals(white)).toBe(false)
    await page.mouse.up()
    const pulled = await ines.numbers('D')
    expect(pulled).not.toBe(d)
    await ines.undo()
    await ines.untilNumbers('B', b)
    await ines.untilNumbers('D', d)
    expect(await page.getByRole('button', { name: 'Undo' }).getAttribute('aria-disabled')).toBe('true')
  })

  it('lists the drawer’s sheets, gentlest rim first, pale before saturated; looks at one, applies it, and undo takes it back', async () => {
    // A page of its own: on one that has just been undone on, the list may still be the one from before.
    await page.close()
    ines = await open('photographer', 'Ines')
    page = ines.page
    const before = await ines.numbers('B')
    await region(page).getByText(/^Trying the drawer’s sheets/).waitFor({ state: 'detached' })
    for (const fold of await region(page).locator('summary').all()) await fold.click()
    const rows = await region(page).getByRole('listitem').allInnerTexts()
    const rims = rows.map((row) => Number(/rim\s*([+−]?\d+\.\d)/.exec(row)![1]!.replace('−', '-')))
    expect(rims).toEqual([...rims].sort((p, q) => p - q))
    const at = (name: string): number => rows.findIndex((row) => row.startsWith(name))
    // A pale sheet takes little of what makes white, a saturated one much (common practice, no source).
    expect(at('Pale straw')).toBeGreaterThanOrEqual(0)
    expect(at('Pale straw')).toBeLessThan(at('Pistachio'))
    const pale = region(page).getByRole('button', { name: /^Pale straw/ })
    await pale.click()
    await ines.numbersAfter('B', before)
    await pale.click()
    await ines.untilNumbers('B', before)
    await pale.click()
    await region(page).getByRole('button', { name: 'Apply', exact: true }).click()
    await ines.numbersAfter('B', before)
    await ines.undo()
    await ines.untilNumbers('B', before)
    expect(await axeFaults(page, '.white')).toEqual([])
  })

  it('who may only look reads the curve and moves nothing', async () => {
    await page.close()
    const saskia = await open('client', 'Saskia')
    const { page: hers } = saskia
    const before = await saskia.numbers('B')
    await curve(hers).focus()
    await hers.keyboard.press('Alt+ArrowLeft')
    expect(await curve(hers).getAttribute('aria-disabled')).toBe('true')
    expect(await saskia.numbers('B')).toBe(before)
    expect(await region(hers).getByRole('button', { name: 'To just white' }).count()).toBe(0)
    expect(saskia.troubles).toEqual([])
  })
})
