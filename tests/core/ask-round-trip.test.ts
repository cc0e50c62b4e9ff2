import { describe, expect, it } from 'vitest'
import { ask } from '../../shared-core/ask/ask.ts'
import { colourDifference2000 } from '../../shared-core/colour/difference.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { fitToHead } from '../../shared-core/plan/fitToHead.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import { coloursOf, forgotten, levelsOf, lightOf, predictionOf, randomLook, withRandomPowers } from './askLooks.ts'
import { randomOf } from './random.ts'

/** A just noticeable difference of colour: mean 2.3 CIELAB units (M. Mahy, L. Van Eycken, A. Oosterlinck 1994). */
const JUST_VISIBLE = 2.3

function farthestLevel(wanted: Prediction, got: Prediction): number {
  return Math.max(...wanted.areas.flatMap((area, i) =>
    (area.meter.stops === null ? [] : [Math.abs((got.areas[i]!.meter.stops ?? -16) - area.meter.stops)])))
}

function farthestColour(wanted: Prediction, got: Prediction): number {
  return Math.max(...wanted.areas.flatMap((area, i) => (area.inFrame ? [colourDifference2000(area.colour.xyz, got.areas[i]!.colour.xyz)] : [])))
}

function expectOnSteps(plan: Plan, lookId: string): void {
  for (const light of Object.values(plan.looks[lookId]!.lights)) {
    const head = plan.heads[light.headId]!
    expect(light.energyJoules / fitToHead(head, light.energyJoules)).toBeCloseTo(1, 9)
  }
}

describe('from a look to its numbers and back', () => {
  it('with the powers forgotten, every level is hit within a tenth of a stop, on the steps of the heads', () => {
    const random = randomOf(41)
    for (let trial = 0; trial < 40; trial++) {
      const look = randomLook(random)
      const wanted = predictionOf(look)
      const { plan, lookId } = withRandomPowers(look, random)
      const { ways, limit } = ask(plan, lookId, levelsOf(wanted), { isPowersOnly: true })
      const after = applyEdit(plan, ways[0]!.edit)
      expect(farthestLevel(wanted, predict(after, lookId)), `trial ${trial}, ${lookId}`).toBeLessThanOrEqual(0.1)
      expect(limit).toBeNull()
      expect(ways[0]!.meetsAll).toBe(true)
      expectOnSteps(after, lookId)
    }
  })

  it('with distance and sheets of a light forgotten too, levels within a fifth of a stop and colours within a just visible step', () => {
    const random = randomOf(1994)
    const missed: string[] = []
    for (let trial = 0; trial < 16; trial++) {
      const look = randomLook(random)
      const wanted = predictionOf(look)
      const ids = Object.keys(look.plan.looks[look.lookId]!.lights)
      const lightId = ids[Math.floor(random() * ids.length)]!
      const others = ['rose', 'teal', 'yellow', 'sky'].filter((id) => !lightOf(look, lightId).gelIds.includes(id))
      const sheets = [others[Math.floor(random() * others.length)]!]
      const stepsIn = Math.round((random() < 0.5 ? -1 : 1) * (2 + 4 * random()))
      const start = withRandomPowers(forgotten(look, lightId, sheets, stepsIn), random)
      const { ways } = ask(start.plan, start.lookId, [...levelsOf(wanted), ...coloursOf(wanted)])
      const got = predict(applyEdit(start.plan, ways[0]!.edit), start.lookId)
      const [level, colour] = [farthestLevel(wanted, got), farthestColour(wanted, got)]
      if (level > 0.2 || colour > JUST_VISIBLE) missed.push(`trial ${trial}: ${look.lookId} ${lightId} ${lightOf(look, lightId).gelIds.join('+') || 'clear'} ${stepsIn}: ${level.toFixed(2)} ${colour.toFixed(2)} | ${ways[0]!.title}`)
    }
    expect(missed).toEqual([])
  })
})
