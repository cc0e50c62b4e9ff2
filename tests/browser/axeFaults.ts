import axe from 'axe-core'
import type { Page } from 'playwright-core'

/** What axe finds wrong within a place of the page, each in a line; none is as it should be. */
export async function axeFaults(page: Page, selector: string): Promise<readonly string[]> {
  await page.locator(selector).first().waitFor()
  await page.evaluate(axe.source)
  return page.evaluate(async (within) => {
    const { axe: loaded } = globalThis as unknown as { axe: typeof axe }
    return (await loaded.run(within)).violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes[0]?.html})`)
  }, selector)
}
