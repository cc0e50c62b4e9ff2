import { describe, expect, it } from 'vitest'
import { clipsAnywhere, clippedInLetters, clippedInWords } from '../../client/frame/clipping.ts'
import { colourAlone } from '../../client/frame/colourAlone.ts'
import { areaNearestTo, nextAreaTowards } from '../../client/frame/nextArea.ts'
import { backgroundInWords, verdictInWords } from '../../client/frame/backgroundWords.ts'
import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { EditResult } from '../../shared-core/plan/edits/changing.ts'
import { switchLight } from '../../shared-core/plan/edits/lights.ts'
import { changeCamera } from '../../shared-core/plan/edits/look.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import type { BackgroundPrediction } from '../../shared-core/predict/prediction.ts'

type Spot = BackgroundPrediction['spots'][number]
const spot = (areaId: string, verdict: Spot['verdict'], stopsMissing: number | null, cast: string): Spot => ({
  areaId, label: areaId.replaceAll('-', ' '), verdict, verdictAfterFinish: verdict, stopsMissing, cast, castStops: 1,
})
const background = (verdict: Spot['verdict'], stopsMissing: number | null, spots: readonly Spot[], afterFinish = verdict) =>
  ({ verdict, verdictAfterFinish: afterFinish, stopsMissing, spots }) as unknown as BackgroundPrediction

describe('the background in words', () => {
  it('names the hue that stays and the stops to white', () => {
    const spots = [spot('background-centre', 'not-white', 2.1, 'violet'), spot('background-top-left', 'not-white', 3, 'deep violet')]
    expect(verdictInWords(background('not-white', 3, spots))).toBe('Background: violet stays; 3.0 stops short of white')
  })

  it('says where, when the middle is better off than the worst spot', () => {
    const spots = [spot('background-centre', 'white', -0.2, ''), spot('background-top-left', 'cast-left', 0.4, 'pale pistachio')]
    expect(verdictInWords(background('cast-left', 0.4, spots))).toBe('Background: nearly white, pale pistachio left at top left; 0.4 stop short')
  })

  it('says that the finish brings it to white, that it is white, or that it is dark', () => {
    const spots = [spot('background-centre', 'cast-left', 0.3, 'pale straw')]
    expect(verdictInWords(background('cast-left', 0.3, spots, 'white'))).toMatch(/; the finish brings it to white$/)
    expect(verdictInWords(background('white', -0.5, []))).toBe('Background: white from edge to edge, 0.5 stop in hand')
    expect(verdictInWords(background('not-white', null, []))).toMatch(/dark/)
  })
})

describe('a background that is not meant to be white', () => {
  it('is told by its colour and its levels, in the middle and in the corners', () => {
    const dusk = predict(demoPlan, 'dusk')
    const words = backgroundInWords(dusk, 'glow')
    const centre = dusk.areas.find(({ id }) => id === 'background-centre')!
    expect(words).toContain(`${centre.colour.words} glow`)
    expect(words).not.toContain('white')
    expect(words).toMatch(/in the middle, down to −\d\.\d in the corners$/)
  })

  it('is told against white when white is wanted', () => {
    expect(backgroundInWords(predict(demoPlan, 'first-light'), 'clean-white')).toMatch(/^Background: white from edge to edge/)
  })
})

describe('clipping in letters and words', () => {
  it('names channels, never by colour alone', () => {
    expect([clippedInLetters([false, false, false]), clippedInWords([false, false, false])]).toEqual(['', ''])
    expect([clippedInLetters([false, false, true]), clippedInWords([false, false, true])]).toEqual(['B', ', blue clips'])
    expect([clippedInLetters([true, false, true]), clippedInWords([true, false, true])]).toEqual(['RB', ', red and blue clip'])
    expect([clippedInLetters([true, true, true]), clippedInWords([true, true, true])]).toEqual(['white', ', clips to white'])
  })

  it('says that nothing clips only where no channel is full', () => {
    expect(clipsAnywhere(Float32Array.of(0, 0.5, 0.999, 0.2, 0.2, 0.2))).toBe(false)
    expect(clipsAnywhere(Float32Array.of(0, 0.5, 0.4, 0.2, 1, 0.2))).toBe(true)
  })
})

describe('going through the areas with arrow keys', () => {
  const at = (id: string, frameX: number, frameY: number) => ({ id, frameX, frameY })
  const [nose, lips, left, right] = [at('nose', 0.5, 0.4), at('lips', 0.5, 0.47), at('cheek-left', 0.4, 0.42), at('cheek-right', 0.6, 0.42)]
  const areas = [nose, lips, left, right]

  it('goes to the nearest that way, and nowhere when there is none', () => {
    expect(nextAreaTowards(areas, nose, 'ArrowDown')).toBe(lips)
    expect(nextAreaTowards(areas, nose, 'ArrowLeft')).toBe(left)
    expect(nextAreaTowards(areas, left, 'ArrowRight')).toBe(nose)
    expect(nextAreaTowards(areas, nose, 'ArrowUp')).toBeUndefined()
    expect(nextAreaTowards(areas, nose, 'Enter')).toBeUndefined()
  })

  it('finds the one nearest to a finger, on the picture and not in shares of it', () => {
    expect(areaNearestTo(areas, 0.52, 0.41, 2 / 3)).toBe(nose)
    expect(areaNearestTo(areas, 0.5, 0.45, 2 / 3)).toBe(lips)
    // 0.046 of the width are less than 0.035 of the height on an upright Frame, and more on a broad one.
    expect(areaNearestTo([at('aside', 0.546, 0.5), at('below', 0.5, 0.535)], 0.5, 0.5, 2 / 3)).toMatchObject({ id: 'aside' })
    expect(areaNearestTo([at('aside', 0.546, 0.5), at('below', 0.5, 0.535)], 0.5, 0.5, 3 / 2)).toMatchObject({ id: 'below' })
    expect(areaNearestTo([], 0.5, 0.5, 1)).toBeUndefined()
  })
})

// Light adds: with every other light switched off, what is left is what this light makes alone.
describe('a light seen alone', () => {
  it.each(Object.keys(demoPlan.looks))('has the colour that the areas of %s take when all other lights are switched off', (lookId) => {
    const look = demoPlan.looks[lookId]!
    // Bright enough that some channels clip: the clip belongs to each light's own picture.
    const brighter = applyEdit(demoPlan, done(changeCamera(demoPlan, lookId, { isoSpeed: look.camera.isoSpeed * 4 })))
    const all = predict(brighter, lookId)
    expect(all.areas.some(({ colour }) => colour.clipped.includes(true))).toBe(true)
    for (const lightId of Object.keys(look.lights)) {
      const others = Object.keys(look.lights).filter((id) => id !== lightId)
      const plan = others.reduce((before, id) => applyEdit(before, done(switchLight(before, lookId, id, false))), brighter)
      for (const area of predict(plan, lookId).areas) {
        const inTheSum = all.areas.find(({ id }) => id === area.id)!
        expect([lightId, area.id, colourAlone(inTheSum, lightId, all.taking, look.finish)]).toEqual([lightId, area.id, area.colour.display])
      }
    }
  })
})

function done(result: EditResult): PlanEdit {
  if (!result.ok) throw new Error(result.message)
  return result.edit
}
