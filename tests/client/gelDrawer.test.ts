import { describe, expect, it } from 'vitest'
import { gelEffect } from '../../client/gels/gelEffect.ts'
import { matchesHueWords } from '../../client/gels/hueFilter.ts'
import { startSources, usualName } from '../../client/gels/ownSheetStart.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { gelSourceSchema } from '../../shared-core/plan/schema/kit.ts'
import { predict } from '../../shared-core/predict/predict.ts'

describe('finding by hue words', () => {
  it('answers to a hue, to a broad word, and to all words at once', () => {
    expect(matchesHueWords('', ['anything'])).toBe(true)
    expect(matchesHueWords('VIOLET', ['Deep violet', 'deep violet'])).toBe(true)
    expect(matchesHueWords('warm', ['Apricot', 'bright amber'])).toBe(true)
    expect(matchesHueWords('warm', ['Sky', 'pale sky'])).toBe(false)
    expect(matchesHueWords('pale green', ['Pistachio', 'pale pistachio'])).toBe(true)
    expect(matchesHueWords('deep green', ['Pistachio', 'pale pistachio'])).toBe(false)
  })
})

describe('what a sheet does, before it is on a light', () => {
  it('is what the board says of a light that carries it', () => {
    const [lookId] = Object.keys(demoPlan.looks) as [string]
    const look = demoPlan.looks[lookId]!
    const viewing = (flashKelvin: number) => ({
      flashKelvin,
      whiteBalanceKelvin: look.camera.whiteBalanceKelvin,
      skin: { itaDegrees: look.subject.skinItaDegrees, undertone: look.subject.skinUndertone },
    })
    for (const light of predict(demoPlan, lookId).lights) {
      const sheets = look.lights[light.id]!.gelIds.map((id) => demoPlan.gels[id]!)
      const effect = gelEffect(sheets, viewing(light.colourTemperatureKelvin))
      expect(effect).toEqual(light.gel)
    }
  })

  // Density of a sheet adds, so two sheets lose twice what one does: Beer and Lambert; a neutral sheet holds it in every channel.
  it('two neutral sheets of a stop lose two', () => {
    const one = { name: 'n', source: { from: 'neutral', lossStops: 1 } } as const
    const effect = gelEffect([one, one], { flashKelvin: 5600, whiteBalanceKelvin: 5500, skin: { itaDegrees: 30, undertone: 0 } })
    expect(effect.meterLossStops).toBeCloseTo(2, 9)
    expect(effect.whiteOutStops).toBeCloseTo(2, 9)
  })
})

describe('making a sheet', () => {
  it('starts from what the plan takes, under a name of its own', () => {
    for (const source of Object.values(startSources)) {
      if (source === null) continue
      expect(gelSourceSchema.safeParse(source).success).toBe(true)
      expect(usualName(source)).not.toBe('')
    }
    expect(usualName({ from: 'mired', shiftMired: -131 })).toBe('Cool 131 mired')
  })
})
