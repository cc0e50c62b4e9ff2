import jsqr from 'jsqr'
import { beforeAll, describe, expect, it } from 'vitest'
import { driftWords, type Drift } from '../../shared-core/ask/whatMatters.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { standsOf } from '../../shared-core/stands/stand.ts'
import { builtIds, digestDifference, standDigest } from '../../shared-core/stands/standDigest.ts'
import { printAddress, readPrintMark } from '../../shared-core/stands/printMark.ts'
import { cornerOf, inGrey, readPdf, type FoundText, type Pixels, type ReadPage } from './pdfPages.ts'
import { demoLookId, demoPlan, PRINTED_AT, PRINTED_JOB, printed, printedLook, printJobOf } from './printedDemo.ts'

const CORNERS = [[0, 0], [1, 0], [0, 1], [1, 1]] as const

/** By a decoder that is not ours (jsqr). */
function decoded({ data, width, height }: Pixels): string | null {
  // jsqr is CommonJS, and says so differently to types and to Node.
  const read = ((jsqr as unknown as { default?: typeof jsqr }).default ?? jsqr) as unknown as (data: Uint8ClampedArray, width: number, height: number) => { data: string } | null
  return read(data, width, height)?.data ?? null
}

const wordsOf = ({ texts }: ReadPage): string => texts.map(({ text }) => text).join(' ').replaceAll(/\s+/g, ' ')

function runsOff({ texts, width, height }: ReadPage): readonly string[] {
  return texts.filter((one) => one.left < 14 || one.right > width - 14 || one.top < 14 || one.bottom > height - 14).map(({ text }) => text)
}

/** Pairs of texts that lie on each other by more than a hair. */
function overlaps({ texts }: ReadPage): readonly string[] {
  const on = (a: FoundText, b: FoundText): boolean =>
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.8 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.8
  return texts.flatMap((a, i) => texts.slice(i + 1).filter((b) => on(a, b)).map((b) => `${a.text} / ${b.text}`))
}

function withNames(plan: Plan): Plan {
  const look = plan.looks[demoLookId]!
  const long = 'A name that somebody wrote in one go without a thought for whoever has to print it, Zoë Ångström-Łukasiewicz'
  return {
    ...plan, title: `${long}, ½ × 3′ 6″ – Ærø ß ę ř, ${'Unbrokenword'.repeat(6)}`.slice(0, 120),
    looks: { ...plan.looks, [demoLookId]: { ...look, name: long.slice(0, 120), note: '', lights: Object.fromEntries(Object.entries(look.lights).map(([id, light]) => [id, { ...light, note: long }])) } },
    gels: Object.fromEntries(Object.entries(plan.gels).map(([id, gel]) => [id, { ...gel, name: `${gel.name} ${'of a long family name '.repeat(3)}`.trim().slice(0, 120) }])),
  }
}

describe('a locked look on paper', () => {
  let pages: readonly ReadPage[]
  beforeAll(async () => {
    pages = await readPdf((await printed(printJobOf([printedLook(demoPlan, demoLookId, 2)]))).pdf)
  }, 60_000)

  it('is one page for the look, one for the marks and one a stand, on A4 (ISO 216: 210 × 297 mm)', () => {
    const look = printedLook(demoPlan, demoLookId, 2)
    expect(pages).toHaveLength(2 + standsOf(demoPlan, demoLookId, look.prediction).length)
    for (const { width, height } of pages) {
      expect(width * 25.4 / 72).toBeCloseTo(210, 3)
      expect(height * 25.4 / 72).toBeCloseTo(297, 3)
    }
  })

  it('says its lock number at the head, at the foot and in each corner of every page', () => {
    for (const page of pages) {
      expect(page.texts.filter(({ text }) => text.includes('LOCK 2') && text.includes('/'))).toHaveLength(4)
      expect(page.texts.some(({ text, bottom }) => text === 'LOCK 2' && bottom < page.height / 4)).toBe(true)
      expect(page.texts.some(({ text, top }) => text.startsWith('Lock 2, plan') && top > page.height * 0.75)).toBe(true)
    }
  })

  it('carries in each corner a mark that another decoder reads, in grey, with all the rest torn off', async () => {
    const digests = builtIds(demoPlan.looks[demoLookId]!).map((id) => standDigest(demoPlan.looks[demoLookId]!, id))
    for (const i of [0, 1, pages.length - 1]) {
      const page = pages[i]!
      const paper = inGrey(await page.render(3))
      for (const corner of CORNERS) {
        const text = decoded(cornerOf(paper, corner))
        expect(text?.startsWith(`${PRINTED_AT}/p/`)).toBe(true)
        expect(readPrintMark(new URL(text!))).toMatchObject({ jobId: PRINTED_JOB, lookId: demoLookId, lockNumber: 2, page: i + 1, digests })
      }
    }
  })

  it('is read back from a coarse and uneven copy: 100 dots an inch, darkened to one side', async () => {
    const { data, width, height } = inGrey(await pages[0]!.render(200 / 72))
    const dim = data.map((value, i) => (i % 4 === 3 ? 255 : value * (0.55 + (0.4 * ((i / 4) % width)) / width)))
    for (const corner of CORNERS) expect(decoded(cornerOf({ data: dim, width, height }, corner))).not.toBeNull()
  })

  it('lets nothing run off the page and no text lie on another', () => {
    for (const page of pages) {
      expect(runsOff(page)).toEqual([])
      expect(overlaps(page)).toEqual([])
    }
  })

  it('has the two tapes, the height and the power of each stand on its page', () => {
    const { prediction } = printedLook(demoPlan, demoLookId, 2)
    standsOf(demoPlan, demoLookId, prediction).forEach((stand, i) => {
      const words = wordsOf(pages[2 + i]!)
      expect(words).toContain(stand.name)
      for (const { floorMetres } of stand.taped.from) expect(words).toContain(`${floorMetres.toFixed(2)} m`)
      expect(words).toContain(`${stand.heightMetres.toFixed(2)} m`)
      if (stand.kind === 'light') for (const { gel } of stand.gels) expect(words).toContain(gel.name)
    })
  })

  it('tells nothing by colour: beside the pictures there is no coloured ink at all', async () => {
    const bare = await readPdf((await printed(printJobOf([{ ...printedLook(demoPlan, demoLookId, 2), frame: null, singles: {} }]))).pdf)
    for (const page of bare) {
      const { data } = await page.render(1)
      let coloured = 0
      for (let i = 0; i < data.length; i += 4) if (Math.max(data[i]!, data[i + 1]!, data[i + 2]!) - Math.min(data[i]!, data[i + 1]!, data[i + 2]!) > 2) coloured += 1
      expect(coloured).toBe(0)
    }
  })
})

describe('a draft, on Letter, in feet and inches', () => {
  it('says so on every page, and its mark knows no lock', async () => {
    const end = { amount: 0.06, isMore: false, first: null }
    const drift: Drift = { measure: 'distance', unit: 'metres', less: end, more: end }
    const look = printedLook(demoPlan, demoLookId, null)
    const matters = Object.fromEntries(Object.keys(look.matters).map((id) => [id, [driftWords(drift, 'imperial')]]))
    const pages = await readPdf((await printed(printJobOf([{ ...look, matters }], { format: 'letter', units: 'imperial' }))).pdf)
    for (const page of pages) {
      // ANSI/ASME Y14.1, size A: 8.5 × 11 inches.
      expect([page.width / 72, page.height / 72]).toEqual([8.5, 11])
      expect(wordsOf(page)).toContain('DRAFT, not locked')
      expect(wordsOf(page)).not.toContain('LOCK')
      expect(runsOff(page)).toEqual([])
      expect(overlaps(page)).toEqual([])
      expect(readPrintMark(new URL(decoded(cornerOf(await page.render(3), [1, 1]))!))?.lockNumber).toBeNull()
    }
    expect(wordsOf(pages[2]!)).toMatch(/\d+'\d+½?"/)
    const all = pages.map(wordsOf).join(' ')
    expect(all).not.toMatch(/\d (cm|m)\b/)
    // 6 cm is 2.36 inches and 2 to 5 cm about 1 to 2, at 25.4 mm an inch.
    expect(all).toContain('distance ±2"')
    expect(all).toContain('Leave 1"–2" of air')
  })
})

describe('a look of many lights', () => {
  it.each([9, 26])('of %i has each of them alone, once, on the look’s own pages', async (count) => {
    const look = demoPlan.looks[demoLookId]!
    const letters = Array.from({ length: count }, (_, i) => String.fromCharCode(65 + i))
    const lights = Object.fromEntries(letters.map((letter) => [`light-${letter}`, { ...look.lights['a']!, letter }]))
    const plan = { ...demoPlan, looks: { [demoLookId]: { ...look, lights, pieces: {} } } }
    const pages = await readPdf((await printed(printJobOf([printedLook(plan, demoLookId, 2)]))).pdf)
    const alone = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).filter((text) => text.endsWith(' alone'))
    expect(alone.sort()).toEqual(letters.map((letter) => `${letter} alone`))
    for (const page of pages.filter((one) => wordsOf(one).includes(' alone'))) {
      expect(runsOff(page)).toEqual([])
      // All stand on one spot of the Floor, where their letters do lie on each other.
      expect(overlaps(page).filter((pair) => pair.includes(' alone'))).toEqual([])
    }
  })
})

describe('names of every kind', () => {
  it.each(['a4', 'letter'] as const)('wrap or are shortened on %s, and letters of many languages come out as they were written', async (format) => {
    const plan = withNames(demoPlan)
    const pages = await readPdf((await printed(printJobOf([printedLook(plan, demoLookId, 12)], { format }))).pdf)
    for (const page of pages) {
      expect(runsOff(page)).toEqual([])
      expect(overlaps(page)).toEqual([])
    }
    expect(wordsOf(pages[2]!)).toContain('Zoë Ångström-Łukasiewicz')
    const short = await readPdf((await printed(printJobOf([printedLook({ ...demoPlan, title: 'Ærø ½ × 3′6″ ±⅓ Жар Ωμέγα 影' }, demoLookId, 1)], { format }))).pdf)
    // No letter of Chinese in the fonts: its replacement stands for it, and nothing else is lost.
    expect(wordsOf(short[0]!)).toContain('Ærø ½ × 3′6″ ±⅓ Жар Ωμέγα \ufffd')
  })
})

describe('the mark of a print', () => {
  const look = demoPlan.looks[demoLookId]!
  const digests = builtIds(look).map((id) => standDigest(look, id))
  const mark = { jobId: PRINTED_JOB, lookId: demoLookId, lockNumber: 3, planHashStart: '0123456789ab', digests, page: 4 }

  it('comes back from its address, and has no place for a key', () => {
    const address = printAddress(mark)
    expect(readPrintMark(new URL(address, PRINTED_AT))).toEqual(mark)
    expect(address).not.toContain('#')
    expect(readPrintMark(new URL(printAddress({ ...mark, lockNumber: null, planHashStart: '', digests: [] }), PRINTED_AT))).toEqual({ ...mark, lockNumber: null, planHashStart: '', digests: [] })
  })

  it.each(['/p/', '/p/a b?l=x&v=.', '/p/job?l=&v=.', '/p/job?l=x&v=lots', '/p/job?l=x&v=.&s=ab', '/p/job?l=x&v=.&n=0', '/p/job?l=<script>&v=.', '/s/job?l=x&v=.'])('is not read from %s', (address) => {
    expect(readPrintMark(new URL(address, PRINTED_AT))).toBeNull()
  })

  it('tells by its digests alone which stand moved, came or went', () => {
    expect(digestDifference(digests, look)).toEqual({ standIds: [], goneCount: 0 })
    const [lightId, light] = Object.entries(look.lights).find(([, one]) => one.on)!
    const moved = { ...look, lights: { ...look.lights, [lightId]: { ...light, place: { ...light.place, xMetres: light.place.xMetres + 0.01 } } } }
    expect(digestDifference(digests, moved)).toEqual({ standIds: [lightId], goneCount: 0 })
    const without = { ...look, lights: { ...look.lights, [lightId]: { ...light, on: false } } }
    expect(digestDifference(digests, without)).toEqual({ standIds: [], goneCount: 1 })
    expect(digestDifference(builtIds(without).map((id) => standDigest(without, id)), look)).toEqual({ standIds: [lightId], goneCount: 0 })
  })
})
