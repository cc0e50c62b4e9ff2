import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { predict } from '../../shared-core/predict/predict.ts'

describe('the demo job is rigged as it says', () => {
  for (const lookId of Object.keys(demoPlan.looks)) {
    it(`${demoPlan.looks[lookId]!.name}: each light stands at its wanted level, to the head's step`, () => {
      const wanted = predict(demoPlan, lookId).lights.filter(({ wantedStops }) => wantedStops !== null)
      expect(wanted.length).toBeGreaterThan(0)
      for (const light of wanted) {
        // Heads step in tenths, so half a step is as near as a setting gets.
        expect(Math.abs(light.level.stops! - light.wantedStops!), `${light.letter} in ${lookId}`).toBeLessThan(0.051)
      }
    })
  }

  it('First light is clean white in every corner and no hotter than it must be', () => {
    const { background } = predict(demoPlan, 'first-light')
    expect(background.verdict).toBe('white')
    expect(-background.stopsMissing!).toBeLessThan(0.4)
  })

  it('nothing in the demo is impossible or unsafe', () => {
    for (const lookId of Object.keys(demoPlan.looks)) {
      expect(predict(demoPlan, lookId).snags.filter(({ severity }) => severity === 'stop')).toEqual([])
    }
  })
})
