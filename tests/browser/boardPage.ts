import type { BrowserContext, Locator, Page } from 'playwright-core'

/** One person's board in one tab, driven as a person drives it. */
export class BoardPage {
  readonly troubles: string[] = []

  private constructor(readonly page: Page) {
    page.on('pageerror', (error) => this.troubles.push(error.message))
    page.on('console', (message) => {
      // The browser itself logs every failed request while a server is down; that is no fault of the page.
      if (message.type() === 'error' && !/Failed to load resource|WebSocket|ERR_/.test(message.text())) this.troubles.push(message.text())
    })
  }

  /** Opens a secret link, gives a name, and waits for the board; or, as a client finds it, for the picture in plain words. */
  static async join(context: BrowserContext, link: string, name: string, opens: 'board' | 'plain words' = 'board'): Promise<BoardPage> {
    const board = new BoardPage(await context.newPage())
    await board.page.goto(link)
    await board.page.getByLabel('Your name').fill(name)
    await board.page.getByRole('button', { name: 'Come in' }).click()
    if (opens === 'board') await board.ready()
    else await board.page.getByRole('button', { name: 'Show the numbers' }).waitFor()
    return board
  }

  /** A client is met by plain words; the board is behind one press. */
  async ready(): Promise<void> {
    const numbers = this.page.getByRole('button', { name: 'Show the numbers' })
    await this.page.getByRole('region', { name: 'Stop Ladder' }).or(numbers).waitFor()
    if (await numbers.isVisible()) await numbers.click()
    await this.page.getByRole('region', { name: 'Stop Ladder' }).waitFor()
    await this.tape('A').waitFor()
  }

  async live(): Promise<void> {
    await this.page.getByRole('button', { name: /^Connection: Live/ }).waitFor()
  }

  /** A light's tape on the Floor; its name says distance, height and power. */
  tape(letter: string): Locator {
    return this.page.getByRole('button', { name: new RegExp(`: Light ${letter}, `) }).first()
  }

  async numbers(letter: string): Promise<string> {
    return (await this.tape(letter).getAttribute('aria-label')) ?? ''
  }

  ladder(letter: string): Locator {
    return this.page.getByRole('slider', { name: new RegExp(`^Light ${letter}, `) })
  }

  /** Steps a light's power with the keyboard on its marker of the Stop Ladder, a tenth a step. */
  async stepPower(letter: string, tenths: number): Promise<void> {
    await this.ladder(letter).focus()
    for (let i = 0; i < Math.abs(tenths); i++) await this.page.keyboard.press(tenths > 0 ? 'ArrowUp' : 'ArrowDown')
  }

  /** Takes a light by its tape on the Floor, ready to be moved. */
  async grabOnFloor(letter: string): Promise<{ x: number; y: number }> {
    const box = (await this.tape(letter).boundingBox())!
    const place = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
    await this.page.mouse.move(place.x, place.y)
    await this.page.mouse.down()
    return place
  }

  /** Takes out all that was asked for, and closes Ask if it is open. */
  async leaveAsk(): Promise<void> {
    const panel = this.page.getByRole('complementary', { name: 'Ask', exact: true })
    if (!(await panel.isVisible())) return
    const takeOut = panel.getByRole('button', { name: /^Take out / })
    while (await takeOut.count() > 0) await takeOut.first().click()
    await panel.getByRole('button', { name: 'Close Ask' }).click()
    await panel.waitFor({ state: 'detached' })
  }

  undo(): Promise<void> {
    return this.page.getByRole('button', { name: 'Undo' }).click()
  }

  redo(): Promise<void> {
    return this.page.getByRole('button', { name: 'Redo' }).click()
  }

  /** Waits until what a light's tape says is no longer `before`, and gives it. */
  async numbersAfter(letter: string, before: string): Promise<string> {
    await this.page.waitForFunction(
      ([thing, was]) => document.querySelector(`[data-thing="${thing}"]`)?.getAttribute('aria-label') !== was,
      [`light:${letter.toLowerCase()}`, before] as const,
    )
    return this.numbers(letter)
  }

  async untilNumbers(letter: string, wanted: string): Promise<void> {
    await this.page.waitForFunction(
      ([thing, words]) => document.querySelector(`[data-thing="${thing}"]`)?.getAttribute('aria-label') === words,
      [`light:${letter.toLowerCase()}`, wanted] as const,
    )
  }
}
