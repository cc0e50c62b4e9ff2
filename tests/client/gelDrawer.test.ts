import { describe, expect, it } from 'vitest'
import { gelEffect } from '../../client/gels/gelEffect.ts'
import { matchesHueWords } from '../../client/gels/hueFilter.ts'
import { readRows } from '../../client/gels/readRows.ts'
import { startSources, usualName } from '../../client/gels/ownSheetStart.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { gelSourceSchema } from '../../shared-core/plan/schema/kit.ts'
import { predict } from '../../shared-core/predict/predict.ts'

const read = (text: string) => {
  const result = readRows(text)
  return result.ok ? result.rows : result.message
}

describe('a measured sheet, pasted', () => {
  const rows = [[400, 0.1], [550, 0.25], [700, 0.8]]

  it('is read from comma, semicolon, tab and space, with or without a heading', () => {
    expect(read('nm,T\n400,0.1\n550,0.25\n700,0.8\n')).toEqual(rows)
    expect(read('400;0,1\r\n550;0,25\r\n700;0,8')).toEqual(rows)
    expect(read('400\t0.1\n550\t0.25\n\n700\t0.8')).toEqual(rows)
    expect(read('400 0.1\n550 0.25\n700 0.8')).toEqual(rows)
    expect(read('400, 0.1, measured\n550, 0.25, measured\n700, 0.8, measured')).toEqual(rows)
  })

  it('takes percent for what it is', () => {
    expect(read('400, 10\n550, 25\n700, 80')).toEqual(rows)
    expect(read('400 nm; 10 %\n550 nm; 25 %\n700 nm; 80 %')).toEqual(rows)
  })

  it('is refused in words when it cannot be one', () => {
    expect(read('violet')).toMatch(/two lines/)
    expect(read('400, 0.1')).toMatch(/two lines/)
    expect(read('0.4, 0.1\n0.7, 0.8')).toMatch(/nanometres/)
    expect(read('400, 0.1\n550, 140\n700, 0.8')).toMatch(/more comes out/)
    expect(read('400, 0.1\n550, 0.5')).toMatch(/reach/)
    expect(read(Array.from({ length: 1200 }, (_, i) => `${380 + i / 3}, 0.5`).join('\n'))).toMatch(/1200 rows/)
  })
})

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
