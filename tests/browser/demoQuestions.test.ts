import type { BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

const DRAFT_1 = 'Look 1, draft 1'
const LOOK_2 = 'Look 2, First light'

/**
 * What a photographer asks about the demo job, asked on the board as one asks it there. The expected numbers are the
 * demo's own, worked out by hand for it, carried over by arithmetic in stops where the board's start values differ: its
 * umbrella gives 0.4 more than the hand reckoned (C stands at −1.7 from full instead of −1.3) and its reflector needs
 * 21 J where 23 were reckoned. DEVELOPERS.md has the table.
 */
describe('the demo’s questions, asked on the board', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    await ines.live()
  })
  afterEach(async () => {
    const undo = ines.page.getByRole('button', { name: 'Undo' })
    for (let i = 0; i < 12 && (await undo.getAttribute('aria-disabled')) === 'false'; i++) await undo.click()
    expect(await undo.getAttribute('aria-disabled')).toBe('true')
    expect(ines.troubles).toEqual([])
    await ines.leaveAsk()
  })
  afterAll(async () => {
    await context?.close()
  })

  async function show(look: string): Promise<void> {
    await ines.page.getByRole('button', { name: /^Look: .*Change look$/ }).click()
    await ines.page.getByRole('dialog', { name: 'Looks of this job' }).getByRole('button', { name: look, exact: true }).click()
    await ines.page.getByRole('button', { name: `Look: ${look}. Change look` }).waitFor()
  }

  async function openSheet(of: 'Kit' | 'Room' | 'Backdrop'): Promise<void> {
    await ines.page.getByRole('navigation', { name: 'The set' }).getByRole('button', { name: of, exact: true }).click()
    await ines.page.getByRole('complementary', { name: 'Details' }).getByRole('heading', { level: 2 }).first().waitFor()
  }

  /** A light's own sheet, lifted if it is down. */
  async function openLight(letter: string): Promise<void> {
    const sheet = ines.page.getByRole('complementary', { name: 'Details' })
    await ines.ladder(letter).click()
    const details = ines.page.getByRole('button', { name: 'Details' })
    if ((await details.getAttribute('aria-expanded')) !== 'true') await details.click()
    await sheet.getByRole('heading', { level: 2, name: new RegExp(`^${letter}\\b`) }).waitFor()
  }

  /** Asks in a line, and gives all that is answered, what is folded too. */
  async function ask(words: string): Promise<string> {
    const panel = ines.page.getByRole('complementary', { name: 'Ask', exact: true })
    if (!(await panel.isVisible())) await ines.page.keyboard.press('/')
    const line = panel.getByLabel('Ask for')
    await line.fill(words)
    await line.press('Enter')
    await panel.getByText('Looking for ways to it').waitFor({ state: 'hidden' })
    await panel.getByRole('list', { name: 'Ways to it' }).getByRole('heading').first().waitFor()
    return (await panel.allTextContents()).join('')
  }

  const without = () => ines.page.getByRole('region', { name: 'Do without', exact: true })

  it('deeper violet: out of power, by what the sheet loses more than there is in hand; nearer by real area', async () => {
    const { page } = ines
    await show(DRAFT_1)
    await openSheet('Kit')
    await page.getByRole('radio', { name: 'Gel Drawer' }).click()
    await page.getByRole('button', { name: 'Make a sheet' }).click()
    const making = page.getByRole('region', { name: 'Make a sheet' })
    await making.getByRole('radio', { name: 'Declared' }).click()
    const code = making.getByLabel(/as a colour code/)
    await code.fill('#7a3fc0')
    await code.press('Enter')
    const loses = making.getByRole('slider', { name: 'The meter loses' })
    for (let i = 0; i < 60 && (await loses.getAttribute('aria-valuetext')) !== '4.9 stops'; i++) await loses.press('ArrowRight')
    await making.getByText(/meter −4\.9/).waitFor()
    await making.getByLabel('Name on the sheet').fill('Deeper violet')
    await making.getByRole('button', { name: 'Put it in the drawer' }).click()

    const answer = await ask('right cheek in deeper violet')
    // By hand 0.6 with 1.3 in hand; C has 1.7, so 0.2, and the drawer's violet loses 3.1 where 3.0 were reckoned: 0.1.
    expect(Number(/C is out of power by (\d\.\d) stops?/.exec(answer)?.[1])).toBeCloseTo(4.9 - 3.1 - 1.7, 5)
    // A point source would promise what is lacking, and the third of a stop one keeps in hand, from 1.82 m; an umbrella
    // of 1.65 m does not (by hand 1.60 m for 0.7).
    const nearer = Number(/Bring C in to (\d\.\d\d) m/.exec(answer)?.[1])
    expect(nearer).toBeLessThan(2.11 * 2 ** (-(0.1 + 0.3) / 2))
    expect(nearer).toBeGreaterThan(1.4)
    expect(answer).toMatch(/Go to ISO (250|320|400)/)
  })

  it('f/11: at ISO 200 it passes, at ISO 100 C is out of power', async () => {
    await show(DRAFT_1)
    const passes = await ask('f/11')
    expect(passes).toMatch(/Met: f\/11/)
    expect(passes).toContain('Every other light keeps its level')
    expect(passes).not.toContain('out of power')
    // f/8 to f/11 is one stop of power (ISO 2720): C from −1.7 to −0.7. By hand 830 J (−0.3) from C at −1.3.
    expect(passes).toMatch(/C to −0\.7 \(was −1\.7\)/)
    const fails = await ask('f/11, ISO 100')
    // Two stops more than there are 1.7 in hand; by hand 0.7 short, of 1.3.
    expect(fails).toMatch(/C is out of power by 0\.3 stops?/)
    expect(fails).toMatch(/Bring C in to 1\.\d\d m/)
    expect(fails).toMatch(/A second head beside C/)
  })

  it('D on the old head: too strong at its lowest by the ratio of the joules; a neutral sheet or farther back', async () => {
    await show(DRAFT_1)
    await openLight('D')
    await ines.page.getByRole('button', { name: 'Do without it' }).click()
    await without().getByRole('button', { name: 'D on Old head 1000, five stops', exact: true }).click()
    await without().getByText(/^What else was tried/).click()
    const best = without().getByRole('region').first()
    expect(await best.getAttribute('aria-label')).toMatch(/^D on Old head 1000, five stops, with Neutral, 1 stop$/)
    // Heads of equal efficacy give light by the joule: 31.25 J at the lowest against 1000 J at −5.6 are 0.6 (by hand 0.4).
    const tooStrong = Math.log2(31.25 / (1000 * 2 ** -5.6)).toFixed(1)
    const plain = without().getByRole('region', { name: 'D on Old head 1000, five stops', exact: true })
    await plain.getByText(`D is ${tooStrong} stop too strong at its lowest power`).waitFor()
    await plain.getByText(`D +${tooStrong} off its level`, { exact: false }).waitFor()
    // By hand 30 cm back for 0.4; for 0.6 some 40 cm by the inverse square, and the drawer tries a quarter of the way more.
    await without().getByRole('region', { name: /^D on Old head 1000, five stops, \d\d cm farther$/ }).first().waitFor()
    // Its modelling lamp is a halogen under a gel: the usual care is said with every one of them.
    await plain.getByText(/halogen/).waitFor()
  })

  it('three heads: what dropping each costs, D’s paper among them, and violet for a white board', async () => {
    await show(DRAFT_1)
    await openSheet('Kit')
    await ines.page.getByRole('radio', { name: 'Do without…' }).click()
    await without().getByRole('button', { name: 'Three heads', exact: true }).click()
    await without().getByText(/^What else was tried/).click()
    // "The board says paper falls": by hand to black; here C's spill is left on it.
    const noPaper = without().getByRole('region', { name: 'Without D', exact: true })
    await noPaper.getByText(/paper falls to .+ \(−2\.\d\)/i).waitFor()
    await noPaper.getByText(/moss is lost/i).waitFor()
    const noViolet = without().getByRole('region', { name: 'Without C, a white board in place of C', exact: true })
    await noViolet.getByText(/violet is lost/i).waitFor()
    expect(await noViolet.innerText()).not.toMatch(/paper falls/i)
    // The story keeps D and gives up C's violet. The board keeps D too, but C as well, which colours most of the picture:
    // it gives up the light that fewest areas see, the narrow edge B. What a client came for is not in its reckoning.
    const left = await without().getByRole('region').all()
    const areasOtherwise = await Promise.all(left.map(async (each) => Number(/(\d+) of 16 areas/.exec(await each.innerText())?.[1])))
    expect(areasOtherwise.length).toBeGreaterThanOrEqual(5)
    expect(areasOtherwise[0]).toBe(Math.min(...areasOtherwise))
    expect(await left[0]!.getAttribute('aria-label')).not.toMatch(/Without [CD]/)
  })

  it('house lights of 400 lux: 5.4 under, a note and no more', async () => {
    await show(DRAFT_1)
    await openSheet('Room')
    const lux = ines.page.getByLabel('At the subject')
    await lux.fill('400')
    await lux.press('Enter')
    // N² C / S over E t with C 330 (ISO 2720): 64 × 330 / 200 over 400 / 160.
    const under = Math.log2((64 * 330) / 200 / (400 / 160)).toFixed(1)
    expect(under).toBe('5.4')
    await ines.page.getByText(`−${under} stops`).waitFor()
    const snags = ines.page.getByRole('region', { name: 'Snags' })
    const note = snags.getByRole('listitem').filter({ hasText: `Room light is at −${under}` })
    await note.getByText('Note', { exact: false }).first().waitFor()
    await ines.page.getByRole('region', { name: 'What the last edit did' }).getByText(/^House lights 400 lux: /).waitFor()
  })

  it('look 2 with orange: out of power at a hot rim, and a paler warm sheet offered', async () => {
    const { page } = ines
    await show(LOOK_2)
    const region = page.getByRole('region', { name: 'White behind' })
    for (const letter of ['B', 'D']) {
      await openLight(letter)
      await page.getByRole('button', { name: 'Take Pistachio off' }).click()
      await page.getByRole('button', { name: 'Gel', exact: true }).click()
      await page.getByRole('dialog', { name: 'Gel Drawer' }).getByRole('button', { name: /^Orange/ }).click()
      await page.getByRole('dialog', { name: 'Gel Drawer' }).waitFor({ state: 'detached' })
    }
    await openSheet('Backdrop')
    await region.getByText(/is out of power by \d\.\d stops?; at full the worst corner lacks \d\.\d/).waitFor()
    await region.getByText(/cannot be driven to white/).waitFor()
    // The rim at full power: by hand +2.9 where white, for orange; pistachio's lies far lower (by hand +0.1, here +0.4).
    const curve = region.getByRole('slider', { name: /^Push of the lights behind/ })
    await curve.focus()
    await page.keyboard.press('Home')
    const rim = /rim ([+−]\d\.\d)/.exec((await curve.getAttribute('aria-valuetext'))!)![1]!
    await page.keyboard.press('Escape')
    expect(Math.abs(Number(rim) - 2.9)).toBeLessThan(0.25)
    const rimOf = async (name: string): Promise<number> => {
      const row = region.getByRole('listitem').filter({ hasText: new RegExp(`^${name}`) }).first()
      return Number(/rim\s*([+−]\d\.\d)/.exec(await row.innerText())![1]!.replace('−', '-'))
    }
    await region.getByText(/more, hotter rims/).click()
    expect(await rimOf('Pale straw')).toBeLessThan(await rimOf('Pistachio'))
    expect(await rimOf('Pistachio')).toBeLessThan(1)
    await region.getByRole('button', { name: /^Look at (quarter warm|pale straw)$/ }).waitFor()
  })
})
