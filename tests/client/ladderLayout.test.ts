import { describe, expect, it } from 'vitest'
import { feedsInWords, feedsOf, LEAST_SHARE } from '../../client/ladder/feeds.ts'
import { ladderLayout, leastLadderHeight } from '../../client/ladder/ladderLayout.ts'
import { shortAreaName, signedStops } from '../../client/ladder/areaNames.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { predict } from '../../shared-core/predict/predict.ts'

const predictions = Object.keys(demoPlan.looks).map((lookId) => predict(demoPlan, lookId))
const apart = (heights: readonly number[]) => {
  const sorted = [...heights].sort((a, b) => a - b)
  return Math.min(...sorted.slice(1).map((height, i) => height - sorted[i]!))
}

describe('a ladder of a real look', () => {
  it.each(predictions)('$lookName: every area and light is on it, none over another', (prediction) => {
    const layout = ladderLayout(prediction, { widthPixels: 280, heightPixels: 640, forThumbs: false })
    expect(layout.areas.map(({ thing }) => thing.area.id).sort()).toEqual(prediction.areas.map(({ id }) => id).sort())
    expect(layout.lights.map(({ thing }) => thing.id)).toEqual(prediction.lights.map(({ id }) => id))
    expect(apart(layout.areas.map(({ labelPixels }) => labelPixels))).toBeGreaterThanOrEqual(18.9)
    expect(apart(layout.lights.map(({ labelPixels }) => labelPixels))).toBeGreaterThanOrEqual(26.9)
  })

  // WCAG 2.2, 2.5.5 (AAA) asks for 44 CSS pixels; thumbs in gloves get 48.
  it.each(predictions)('$lookName: thumbs get targets at least 44 pixels apart, on a ladder as high as that needs', (prediction) => {
    const heightPixels = leastLadderHeight(prediction, true)
    const layout = ladderLayout(prediction, { widthPixels: 390, heightPixels, forThumbs: true })
    expect(apart(layout.areas.map(({ labelPixels }) => labelPixels))).toBeGreaterThanOrEqual(44)
    expect(apart(layout.lights.map(({ labelPixels }) => labelPixels))).toBeGreaterThanOrEqual(44)
    for (const { labelPixels } of [...layout.areas, ...layout.lights]) {
      expect(labelPixels).toBeGreaterThanOrEqual(22)
      expect(labelPixels).toBeLessThanOrEqual(heightPixels - 22)
    }
  })
})

describe('who feeds whom', () => {
  const [prediction] = predictions
  if (!prediction) throw new Error('The demo job has a look')

  it('an area’s feeds are its lights, thickest first, and make up the whole of it but for what cannot be seen', () => {
    for (const area of prediction.areas) {
      const feeds = feedsOf(prediction, { kind: 'area', id: area.id })
      const shares = feeds.map(({ share }) => share)
      expect(shares).toEqual([...shares].sort((a, b) => b - a))
      const sum = shares.reduce((total, share) => total + share, 0)
      expect(sum).toBeLessThanOrEqual(1 + 1e-9)
      expect(sum).toBeGreaterThan(1 - LEAST_SHARE * prediction.lights.length)
    }
  })

  it('touched from either end, the same line joins them', () => {
    const fromLights = prediction.lights.flatMap(({ id }) => feedsOf(prediction, { kind: 'light', id }))
    const fromAreas = prediction.areas.flatMap(({ id }) => feedsOf(prediction, { kind: 'area', id }))
    const key = ({ areaId, lightId, share }: (typeof fromAreas)[number]) => `${areaId} ${lightId} ${share}`
    expect(fromLights.map(key).sort()).toEqual(fromAreas.map(key).sort())
  })

  it('is said in letters and percent', () => {
    expect(feedsInWords(prediction, 'nose')).toMatch(/^[A-Z]\d? \d+ %(, [A-Z]\d? \d+ %)*$/)
    expect(feedsInWords(prediction, 'nowhere')).toBe('no light')
  })
})

describe('short names and signed stops', () => {
  it('keep the camera’s left and right, and call the background what stands there', () => {
    expect(shortAreaName({ label: 'camera-left rear jaw' }, 'paper')).toBe('rear jaw L')
    expect(shortAreaName({ label: 'background top right' }, 'wall')).toBe('wall top R')
    expect(shortAreaName({ label: 'background centre' }, 'front')).toBe('front mid')
  })

  it('always carry a true sign, and never a minus nought', () => {
    expect([0.34, -1.66, -0.04, null].map((stops) => signedStops(stops))).toEqual(['+0.3', '−1.7', '0.0', 'none'])
  })
})
