import axe from 'axe-core'
import type { Page } from 'playwright-core'

/** Fades take 150 ms; what never ends is not waited for. */
const FADES_END_WITHIN_MS = 1_000

/** What axe finds wrong within a place of the page once its fades are over, each in a line; none is as it should be. */
export async function axeFaults(page: Page, selector: string): Promise<readonly string[]> {
  await page.locator(selector).first().waitFor()
  await page.evaluate(axe.source)
  return page.evaluate(async ([within, atMostMs]) => {
    const fades = document.getAnimations().map(({ finished }) => finished.catch(() => null))
    await Promise.race([Promise.all(fades), new Promise((resolve) => setTimeout(resolve, atMostMs))])
    const { axe: loaded } = globalThis as unknown as { axe: typeof axe }
    return (await loaded.run(within)).violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes[0]?.html})`)
  }, [selector, FADES_END_WITHIN_MS] as const)
}
