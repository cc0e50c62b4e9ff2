import { describe, expect, it } from 'vitest'
import { displayHex, intoGamut } from '../../shared-core/colour/display.ts'
import { applyFinish, finishChannel, MID_GREY, NO_FINISH } from '../../shared-core/colour/finish.ts'
import { colourWords } from '../../shared-core/colour/hueWords.ts'
import { linearFromHex, SRGB_WHITE_XYZ, xyzFromLinear } from '../../shared-core/spectra/srgb.ts'

describe('the finish', () => {
  it('as shot changes nothing, outside the display neither', () => {
    expect(applyFinish([-0.1, 0.3, 1.4], NO_FINISH)).toEqual([-0.1, 0.3, 1.4])
  })

  it('exposure is a factor in light, and stops at white', () => {
    expect(finishChannel(0.1, { ...NO_FINISH, exposureStops: 1 })).toBeCloseTo(0.2, 12)
    expect(finishChannel(0.1, { ...NO_FINISH, exposureStops: -1 })).toBeCloseTo(0.05, 12)
    expect(finishChannel(0.7, { ...NO_FINISH, exposureStops: 1 })).toBe(1)
  })

  it('a white point of half a stop makes what is half a stop short of clipping white', () => {
    const finish = { ...NO_FINISH, whitePointStops: 0.5 }
    expect(finishChannel(2 ** -0.5, finish)).toBeCloseTo(1, 12)
    expect(finishChannel(2 ** -0.6, finish)).toBeLessThan(0.99)
  })

  it('the black point becomes black and white stays', () => {
    const finish = { ...NO_FINISH, blackPoint: 0.05 }
    expect(finishChannel(0.05, finish)).toBeCloseTo(0, 12)
    expect(finishChannel(1, finish)).toBeCloseTo(1, 12)
  })

  it('contrast turns about mid-grey: black, grey and white stay, the slope there is 1 + contrast', () => {
    for (const contrast of [-0.8, -0.3, 0.4, 1]) {
      const finish = { ...NO_FINISH, contrast }
      for (const fixed of [0, MID_GREY, 1]) expect(finishChannel(fixed, finish)).toBeCloseTo(fixed, 12)
      const step = 1e-5
      const slope = (finishChannel(MID_GREY + step, finish) - finishChannel(MID_GREY - step, finish)) / (2 * step)
      expect(Math.abs(slope - (1 + contrast))).toBeLessThan(0.002)
    }
  })

  it('never turns tones round', () => {
    for (const contrast of [-0.8, 1]) {
      let before = -1
      for (let value = 0; value <= 1; value += 0.01) {
        const after = finishChannel(value, { exposureStops: 0.3, contrast, whitePointStops: 0.4, blackPoint: 0.02 })
        expect(after).toBeGreaterThanOrEqual(before)
        before = after
      }
    }
  })
})

describe('the display', () => {
  it('shows what sRGB holds unchanged', () => {
    for (const hex of ['#000000', '#ffffff', '#c69676', '#3050a0']) {
      expect(displayHex(xyzFromLinear(linearFromHex(hex)), NO_FINISH)).toEqual({ hex, outsideDisplay: false })
    }
  })

  it('tells when it cannot hold a colour, and keeps its luminance while mixing it with grey', () => {
    const outside = [-0.2, 0.5, 0.4] as const
    // Rec. 709 luminance of linear sRGB (IEC 61966-2-1).
    const luminance = ([r, g, b]: readonly [number, number, number]): number => 0.212639 * r + 0.7151687 * g + 0.0721923 * b
    const inside = intoGamut(outside)
    expect(Math.min(...inside)).toBeCloseTo(0, 12)
    expect(luminance(inside)).toBeCloseTo(luminance(outside), 6)
    expect(displayHex(xyzFromLinear([...outside]), NO_FINISH).outsideDisplay).toBe(true)
  })

  it('does not show a burnt yellow as white', () => {
    const [red, green, blue] = intoGamut([1.1, 1.02, -0.1])
    expect([red, green]).toEqual([1, expect.closeTo(1, 1)])
    expect(blue).toBeLessThan(0.1)
  })

  it('keeps a cast the finish has not cleared', () => {
    const lifted = displayHex(xyzFromLinear([0.95, 0.95, 0.75]), { ...NO_FINISH, whitePointStops: 0.2 })
    expect(lifted.hex.slice(0, 5)).toBe('#ffff')
    expect(lifted.hex).not.toBe('#ffffff')
    expect(displayHex(xyzFromLinear([0.95, 0.95, 0.75]), { ...NO_FINISH, whitePointStops: 0.5 }).hex).toBe('#ffffff')
  })
})

describe('colour words', () => {
  const wordsOf = (hex: string): string => colourWords(xyzFromLinear(linearFromHex(hex)))
  it.each([
    ['#ffffff', 'white'], ['#000000', 'black'], ['#767676', 'mid grey'], ['#d8d8d8', 'light grey'],
    ['#3a1a6a', 'deep violet'], ['#ffd9b0', 'pale apricot'], ['#f2f6ff', 'near white, cool'],
    ['#fff6e8', 'near white, warm'], ['#ff0000', 'red'], ['#00ff00', 'bright green'], ['#0000ff', 'deep blue'], ['#103a12', 'deep green'],
    ['#ff8a1f', 'orange'],
  ])('%s is %s', (hex, words) => expect(wordsOf(hex)).toBe(words))

  it('has words for every colour of the display and for light past it', () => {
    for (let r = 0; r <= 1.2; r += 0.2) {
      for (let g = 0; g <= 1.2; g += 0.2) {
        for (let b = 0; b <= 1.2; b += 0.2) expect(colourWords(xyzFromLinear([r, g, b]))).toMatch(/^[a-z, ]+$/)
      }
    }
  })

  it('calls the white of the display white', () => expect(colourWords([...SRGB_WHITE_XYZ])).toBe('white'))
})
