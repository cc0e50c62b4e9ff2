import { describe, expect, it } from 'vitest'
import { converter } from 'culori'
import { xyzFromChannels } from '../../shared-core/colour/cameraMatrix.ts'
import { displayHex } from '../../shared-core/colour/display.ts'
import { applyFinish, finishChannel, NO_FINISH, type Finish } from '../../shared-core/colour/finish.ts'
import type { CameraRgb } from '../../shared-core/colour/triples.ts'
import { develop, type DisplaySpace } from '../../shared-core/picture/develop.ts'
import { linearFromXyz } from '../../shared-core/spectra/srgb.ts'

/** Channels of every strength, clipped ones among them: some lie well outside what a display holds. */
const CHANNELS: readonly CameraRgb[] = [0, 0.02, 0.15, 0.5, 0.8, 1].flatMap((red, _, levels) =>
  levels.flatMap((green) => levels.map((blue): CameraRgb => [red, green, blue])))

function developed(whiteBalanceKelvin: number, finish: Finish, space: DisplaySpace): readonly (readonly number[])[] {
  const into = new Uint8ClampedArray(4 * CHANNELS.length)
  develop(Float32Array.from(CHANNELS.flat()), CHANNELS.length, 1, { whiteBalanceKelvin, veilingGlare: 0, finish, space }, into)
  return CHANNELS.map((_, i) => [...into.subarray(4 * i, 4 * i + 3)])
}

describe('the finish of the picture', () => {
  it.each<[string, Partial<Finish>]>([
    ['as shot', {}], ['a stop less', { exposureStops: -1 }], ['a third of a stop less', { exposureStops: -1 / 3 }],
    ['a stop more', { exposureStops: 1 }], ['five stops more', { exposureStops: 5 }], ['white half a stop lower', { whitePointStops: 0.5 }],
    ['a raised black point', { blackPoint: 0.2 }], ['harder', { contrast: 1 }], ['softer', { contrast: -0.5 }],
    ['everything at once', { exposureStops: -0.7, contrast: 0.6, whitePointStops: 1, blackPoint: 0.05 }],
    ['the hardest of all', { exposureStops: 5, contrast: 1, whitePointStops: 2, blackPoint: 0.2 }],
  ])('is the finish of an area\'s colour: %s', (_, change) => {
    const finish = { ...NO_FINISH, ...change }
    for (const kelvin of [2800, 5200, 9000]) {
      const pixels = developed(kelvin, finish, 'srgb')
      CHANNELS.forEach((channels, i) => {
        const { hex } = displayHex(xyzFromChannels(channels, kelvin), finish)
        const codes = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16))
        codes.forEach((code, k) => expect(Math.abs(pixels[i]![k]! - code), `${channels.join()} at ${kelvin} K`).toBeLessThanOrEqual(1))
      })
    }
  })

  it('is asked about channels far outside the display', () => {
    const all = CHANNELS.flatMap((channels) => linearFromXyz(xyzFromChannels(channels, 2800)))
    expect(Math.min(...all)).toBeLessThan(-0.3)
    expect(Math.max(...all)).toBeGreaterThan(1.3)
    // A stop less is half the light (common practice, no source), above full scale as below it.
    expect(finishChannel(1.3, { ...NO_FINISH, exposureStops: -1 })).toBeCloseTo(0.65, 12)
  })
})

describe('a display with wider primaries', () => {
  // Display P3 by culori: its own matrices, from primaries and white.
  const toP3 = converter('p3')

  it.each<[string, Partial<Finish>]>([['as shot', {}], ['finished', { exposureStops: -0.5, contrast: 0.3 }]])('shows the same colours: %s', (_, change) => {
    const finish = { ...NO_FINISH, ...change }
    const pixels = developed(5200, finish, 'display-p3')
    let pastSrgb = 0
    CHANNELS.forEach((channels, i) => {
      const [r, g, b] = applyFinish(linearFromXyz(xyzFromChannels(channels, 5200)), finish)
      const shown = toP3({ mode: 'lrgb', r, g, b })
      const codes = [shown.r, shown.g, shown.b].map((value) => 255 * value)
      if (Math.min(...codes) < 0 || Math.max(...codes) > 255) return
      if (Math.min(r, g, b) < 0 || Math.max(r, g, b) > 1) pastSrgb++
      codes.forEach((code, k) => expect(Math.abs(pixels[i]![k]! - code), channels.join()).toBeLessThan(1))
    })
    expect(pastSrgb).toBeGreaterThan(5)
  })
})
