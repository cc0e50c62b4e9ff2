import { describe, expect, it } from 'vitest'
import { differenceWords } from '../../shared-core/ask/differenceWords.ts'
import { matchColour } from '../../shared-core/ask/matchColour.ts'
import { bestSetting } from '../../shared-core/ask/matchLevel.ts'
import { VISIBLE_STEP } from '../../shared-core/ask/visibleChange.ts'
import { labOfXyz } from '../../shared-core/colour/difference.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { rememberingPredictor } from './rememberingPredictor.ts'

const lookId = 'dusk-draft-1'
const predictor = createPredictor()
/** For what is asked for again and again from one look. */
const remembering = rememberingPredictor()

/** By individual typology angle (classes of Chardon, Cretois and Hourseau 1991; Del Bino and Bernerd 2013). */
const SKINS = { fair: 48, medium: 20, deep: -40 }
/** One of each part of the hue circle, pale and dense. */
const UNKNOWN = ['violet', 'apricot', 'rose', 'sky', 'green', 'lavender']

function changed(plan: Plan, ...changes: readonly (readonly [path: string, set: number | readonly string[] | boolean])[]): Plan {
  return applyEdit(plan, { name: 'test', changes: changes.map(([path, set]) => ({ path: ['looks', lookId, ...path.split('.')], set })) })
}

/** What a display shows of an area, in eight bits a channel: all that a dropped picture tells. */
function pixel(plan: Plan, areaId: string): string {
  return predictor(plan, lookId).areas.find(({ id }) => id === areaId)!.colour.display
}

describe('matching a colour', () => {
  for (const [skin, itaDegrees] of Object.entries(SKINS)) {
    it(`finds a gel that was made unknown again, on ${skin} skin`, () => {
      const onSkin = changed(demoPlan, ['subject.skinItaDegrees', itaDegrees])
      for (const gelId of UNKNOWN) {
        const hex = pixel(changed(onSkin, ['lights.c.gelIds', [gelId]]), 'cheek-right')
        const forgotten = changed(onSkin, ['lights.c.gelIds', []], ['lights.c.energyJoules', 60])
        const match = matchColour(forgotten, lookId, 'cheek-right', { hex }, remembering)
        expect(match.lightId).toBe('c')
        expect(match.ways[0]!.gelIds, `${gelId} on ${skin}`).toEqual([gelId])
        // The power is found again too: to the head's tenth, and the tenth next to it where eight bits hide it.
        const energy = onSkin.looks[lookId]!.lights.c!.energyJoules
        expect(Math.abs(Math.log2(match.ways[0]!.energyJoules / energy)), gelId).toBeLessThan(0.11)
      }
    })
  }

  it('finds it again on paper', () => {
    for (const gelId of UNKNOWN) {
      const hex = pixel(changed(demoPlan, ['lights.d.gelIds', [gelId]]), 'background-centre')
      const forgotten = changed(demoPlan, ['lights.d.gelIds', []], ['lights.d.energyJoules', 200])
      const match = matchColour(forgotten, lookId, 'background-centre', { hex }, remembering)
      expect(match.lightId).toBe('d')
      expect(match.ways[0]!.gelIds, gelId).toEqual([gelId])
    }
  })

  it('finds two sheets again where no single sheet does it', () => {
    const pair = ['pistachio', 'turquoise']
    const hex = pixel(changed(demoPlan, ['lights.d.gelIds', pair], ['lights.d.energyJoules', 125]), 'background-centre')
    const { ways } = matchColour(demoPlan, lookId, 'background-centre', { hex }, predictor)
    expect([...ways[0]!.gelIds].sort()).toEqual(pair)
    expect(ways[0]!.words).toBe('the same to the eye')
  })

  it('each way is what the prediction of its edit says', () => {
    const xyz = [0.2, 0.12, 0.3] as const
    const { ways } = matchColour(demoPlan, lookId, 'cheek-right', { xyz }, predictor)
    for (const way of ways.slice(0, 3)) {
      const { areas, lights } = predictor(applyEdit(demoPlan, way.edit), lookId)
      expect(areas.find(({ id }) => id === 'cheek-right')!.colour.words).toBe(way.reached)
      expect(lights.find(({ id }) => id === 'c')!.powerText).toBe(way.powerText)
    }
    for (let i = 1; i < ways.length; i++) expect(ways[i]!.difference).toBeGreaterThan(ways[i - 1]!.difference - VISIBLE_STEP - 0.01)
  })

  it('says plainly when nothing comes near, and comes nearer once the clear light is gone', () => {
    // A display's blue on a nose that a clear key also lights: no sheet takes light away (common practice, no source).
    const hex = '#2030e0'
    const match = matchColour(demoPlan, lookId, 'nose', { hex }, predictor, 'c')
    expect(match.isNear).toBe(false)
    expect(match.ways[0]!.difference).toBeGreaterThan(10)
    expect(match.words).toContain('only paint or retouch')
    const alone = matchColour(changed(demoPlan, ['lights.a.on', false], ['lights.b.on', false]), lookId, 'nose', { hex }, predictor, 'c')
    expect(alone.ways[0]!.difference).toBeLessThan(match.ways[0]!.difference - 5)
  })

  it('names the power that a head lacks for the nearest level', () => {
    const made = changed(demoPlan, ['lights.c.gelIds', ['violet']], ['lights.c.energyJoules', 800])
    const area = predictor(made, lookId).areas.find(({ id }) => id === 'cheek-right')!
    const looked = {
      wanted: labOfXyz(area.colour.xyz), finish: null, whiteBalanceKelvin: made.looks[lookId]!.camera.whiteBalanceKelvin,
      head: { ...demoPlan.heads['head-1000']!, fullEnergyJoules: 100 }, energyJoules: 800,
    }
    // 800 J is three stops over this head's 100 J.
    const setting = bestSetting(area, 'c', looked, null)!
    expect(setting.energyJoules).toBe(100)
    expect(Math.abs(setting.stopsShort - 3)).toBeLessThan(0.06)
  })
})

describe('a colour difference in words', () => {
  // CIELAB by its definition (CIE 15): +a towards red, +b towards yellow, L lightness.
  const grey = { l: 50, a: 0, b: 0 }
  it('says what changed most first, and how much', () => {
    expect(differenceWords({ ...grey, l: 54 }, grey)).toBe('a shade lighter')
    expect(differenceWords({ ...grey, l: 30 }, grey)).toBe('far darker')
    expect(differenceWords({ l: 50, a: 30, b: 40 }, { l: 50, a: 40, b: 30 })).toMatch(/warmer/)
    expect(differenceWords({ l: 50, a: 30, b: -30 }, { l: 50, a: 30, b: -10 })).toMatch(/cooler|richer/)
    expect(differenceWords({ l: 50, a: 10, b: 10 }, { l: 50, a: 30, b: 30 })).toMatch(/paler/)
    expect(differenceWords({ l: 50.3, a: 30, b: 30 }, { l: 50, a: 30, b: 30 })).toBe('the same to the eye')
  })
})
