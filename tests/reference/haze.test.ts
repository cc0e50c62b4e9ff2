import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { hazeOf } from '../../shared-core/predict/haze.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import type { AreaPrediction } from '../../shared-core/predict/prediction.ts'
import { takingOf } from '../../shared-core/predict/taking.ts'

/** What of clip a spot meter calls grey: q K / 78 with q 0.65 and K 12.5 (ISO 12232, ISO 2720), 3.263 stops below. */
const GREY = (0.65 * 12.5) / 78

const [anyArea] = predict(demoPlan, 'dusk').areas
const areaOf = (level: number): AreaPrediction => ({ ...anyArea!, colour: { ...anyArea!.colour, channels: [level, level, level] } })

describe('stray light of the lens', () => {
  it.each([[8, 100], [2.8, 800]])('of a grey frame lifts black to its share of grey: a 64th is six stops under, at f/%d and ISO %d', (fNumber, isoSpeed) => {
    const taking = takingOf({ ...demoPlan.looks['dusk']!.camera, fNumber, isoSpeed, headroomStops: 0 })
    expect(hazeOf([areaOf(GREY)], [areaOf(GREY)], 0.4, 1 / 64, taking).blackStopsUnderGrey).toBeCloseTo(-6, 9)
  })

  it('weighs background and subject by their shares of the frame', () => {
    const taking = takingOf({ ...demoPlan.looks['dusk']!.camera, headroomStops: 0 })
    const { frameMean, blackStopsUnderGrey } = hazeOf([areaOf(4 * GREY)], [areaOf(0)], 0.75, 1 / 64, taking)
    expect(frameMean).toBeCloseTo(GREY, 9)
    expect(blackStopsUnderGrey).toBeCloseTo(-6, 9)
  })
})
