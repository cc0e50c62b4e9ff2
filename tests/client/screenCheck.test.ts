import { converter, differenceCiede2000, formatHex } from 'culori'
import { describe, expect, it } from 'vitest'
import { darkWedge, dealt, hueRow, lightWedge } from '../../client/agree/screenCheck/patches.ts'
import { faultWords, screenFaults, swapsIn, type ScreenAnswers } from '../../client/agree/screenCheck/screenFaults.ts'
import { photographedSwatch } from '../../client/agree/screenCheck/swatchPhoto.ts'
import { WEDGE_STEPS } from '../../shared-core/notes/screenCheck.ts'

const good: ScreenAnswers = { neutralSurround: true, darkStepsSeen: 11, lightStepsSeen: 12, hueOrder: [0, 1, 2, 3, 4, 5, 6, 7], tooDim: false, grey: 'neutral' }
const faultsOf = (more: Partial<ScreenAnswers>) => screenFaults({ ...good, ...more }).map(({ key }) => key)

describe('what is wrong with a screen', () => {
  it('is nothing where all is seen', () => {
    expect(faultsOf({})).toEqual([])
    expect(faultWords([])).toBe('Good enough to judge colour on')
  })

  // A warmed white point for the evening, too little light and a clipped low end: what the trade names. Common practice, no source.
  it('is named in words: night tint, too dim, crushed blacks, burnt whites', () => {
    expect(faultsOf({ grey: 'yellowish' })).toEqual(['night-tint'])
    expect(faultsOf({ grey: 'bluish' })).toEqual(['grey-cast'])
    expect(faultsOf({ tooDim: true })).toEqual(['too-dim'])
    expect(faultsOf({ darkStepsSeen: 3 })).toEqual(['crushed-blacks'])
    expect(faultsOf({ lightStepsSeen: 3 })).toEqual(['burnt-whites'])
    expect(faultsOf({ neutralSurround: false })).toEqual(['coloured-surround'])
  })

  it('is the dimness, and not the blacks, where a dim screen hides dark steps', () => {
    expect(faultsOf({ tooDim: true, darkStepsSeen: 3 })).toEqual(['too-dim'])
  })

  it('lets two neighbouring hues change places, and no more', () => {
    expect(swapsIn([0, 1, 2, 3])).toBe(0)
    // A row turned round has every pair the wrong way: n (n - 1) / 2.
    expect(swapsIn([3, 2, 1, 0])).toBe(6)
    expect(faultsOf({ hueOrder: [0, 2, 1, 3, 4, 5, 6, 7] })).toEqual([])
    expect(faultsOf({ hueOrder: [0, 2, 1, 4, 3, 5, 6, 7] })).toEqual(['hues-alike'])
  })
})

describe('the patches', () => {
  it('have as many steps at either end as the result counts, fainter and fainter, and no pure white', () => {
    for (const wedge of [darkWedge, lightWedge]) {
      expect(wedge.map(({ steps }) => steps)).toEqual(Array.from({ length: WEDGE_STEPS }, (_, i) => i + 1))
      const contrast = wedge.map(({ ground, mark }) => Math.abs(code(ground) - code(mark)))
      contrast.slice(1).forEach((each, i) => expect(each).toBeLessThan(contrast[i]!))
      for (const { ground, mark } of wedge) expect(Math.max(code(ground), code(mark))).toBeLessThan(255)
    }
  })

  it('are hues that differ visibly from their neighbours, of one lightness, and dealt out of order', () => {
    // CIEDE2000 by culori: 2 and more is seen side by side (from memory; after Mokrzycki and Tatol 2011).
    hueRow.slice(1).forEach((hue, i) => expect(differenceCiede2000()(hue, hueRow[i]!)).toBeGreaterThan(2))
    expect(new Set(hueRow.map((hue) => converter('oklch')(hue)!.l)).size).toBe(1)
    expect([...dealt].sort()).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
    dealt.slice(1).forEach((patch, i) => expect(Math.abs(patch - dealt[i]!)).toBeGreaterThan(1))
  })
})

describe('a photographed swatch', () => {
  const toLinear = converter('lrgb')
  /** A surface under light that scales each channel; sRGB transfer by culori. */
  const lit = (hex: string, light: readonly [number, number, number]): string => {
    const { r, g, b } = toLinear(hex)!
    return formatHex({ mode: 'lrgb', r: r * light[0], g: g * light[1], b: b * light[2] })
  }
  // 18 % in linear light.
  const card = formatHex({ mode: 'lrgb', r: 0.18, g: 0.18, b: 0.18 })

  it('is the same colour under warm light once the card is grey', () => {
    const warm = [1.4, 1, 0.6] as const
    const found = photographedSwatch(lit(card, warm), lit('#6a4c93', warm), '#6a4c93')!
    // Codes of 8 bits are half a step out at the most.
    expect(found.difference).toBeLessThan(1)
    expect(found.words).toMatch(/the same colour/)
  })

  it('differs by as much as the library says', () => {
    expect(photographedSwatch(card, '#6a4c93', '#7a4c83')!.difference).toBeCloseTo(differenceCiede2000()('#6a4c93', '#7a4c83'), 0)
  })

  it('says nothing by a card that is burnt out or black', () => {
    expect(photographedSwatch('#ffffff', '#6a4c93', '#6a4c93')).toBeNull()
    expect(photographedSwatch('#050505', '#6a4c93', '#6a4c93')).toBeNull()
  })
})

function code(colour: string): number {
  return Number(/\d+/.exec(colour)![0])
}
