import { describe, expect, it } from 'vitest'
import { standInLines } from '../../client/agree/standIns/standInLines.ts'
import { standInWords } from '../../client/agree/standIns/standInWords.ts'
import { variantsOf } from '../../client/agree/standIns/variants.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import type { AreaColour, Prediction } from '../../shared-core/predict/prediction.ts'

const predict = createPredictor()
const own = predict(demoPlan, 'dusk')

/** The prediction with one area's colour changed, and all else out of the Frame. */
function withColour(prediction: Prediction, id: string, colour: Partial<AreaColour>): Prediction {
  return { ...prediction, areas: prediction.areas.map((area) => ({
    ...area, inFrame: area.id === id, colour: area.id === id ? { ...area.colour, ...colour } : area.colour,
  })) }
}

describe('the words under a stand-in', () => {
  const violet = { display: '#7a4cc0', words: 'violet', clipped: [false, false, false] } as const

  it('say that a colour goes dark, where it was one and is dark now', () => {
    const [then, now] = [withColour(own, 'neck', violet), withColour(own, 'neck', { ...violet, display: '#150c22', words: 'deep violet' })]
    expect(standInWords(now, then, false)).toEqual(['violet goes dark on the neck'])
    expect(standInWords(then, then, false)).toEqual(['no visible change'])
  })

  it('speak of sheen only where nothing but the sheen differs', () => {
    const [then, now] = [withColour(own, 'neck', violet), withColour(own, 'neck', { ...violet, display: '#a07ae0', words: 'bright violet' })]
    expect(standInWords(now, then, true)).toEqual(['violet edge in the sheen, neck'])
    expect(standInWords(now, then, false).join()).not.toMatch(/sheen/)
  })

  it('say by how many stops the face is darker: half the light is one stop', () => {
    const nose = own.areas.find(({ id }) => id === 'nose')!.colour
    const halved = withColour(own, 'nose', { xyz: [nose.xyz[0] / 2, nose.xyz[1] / 2, nose.xyz[2] / 2] })
    expect(standInWords(halved, withColour(own, 'nose', {}), false)).toEqual(['face 1.0 stops darker'])
  })
})

describe('the row of stand-ins of a look', () => {
  const { upper, lower } = variantsOf(demoPlan, 'dusk')
  const subjectOf = (key: string) => [...upper, ...lower].find((each) => each.key === key)!.plan.looks['dusk']!.subject

  it('pins the cast first, unchanged, and changes nothing but the person', () => {
    expect(upper[0]!.key).toBe('own')
    expect(subjectOf('own')).toEqual(demoPlan.looks['dusk']!.subject)
    for (const { plan } of [...upper, ...lower]) {
      const { subject: _, ...rest } = plan.looks['dusk']!
      const { subject: __, ...restBefore } = demoPlan.looks['dusk']!
      expect(rest).toEqual(restBefore)
    }
  })

  it('has each of five skins matt and dewy, and darker and lighter hair than the cast', () => {
    expect(new Set([0, 1, 2, 3, 4].map((i) => subjectOf(`matt-${i}`).skinItaDegrees)).size).toBe(5)
    for (let i = 0; i < 5; i++) {
      expect(subjectOf(`matt-${i}`).skinItaDegrees).toBe(subjectOf(`dewy-${i}`).skinItaDegrees)
      expect(subjectOf(`matt-${i}`).skinSheen).toBeLessThan(subjectOf(`dewy-${i}`).skinSheen)
    }
    const lightness = (key: string) => Number.parseInt(subjectOf(key).hair.slice(3, 5), 16)
    expect(lightness('dark-hair')).toBeLessThan(lightness('own'))
    expect(lightness('light-hair')).toBeGreaterThan(lightness('own'))
  })

  it('has words under every picture but the cast’s own', () => {
    const steps = standInLines(demoPlan, 'dusk', predict)
    let step = steps.next()
    while (!step.done) step = steps.next()
    expect(Object.keys(step.value).sort()).toEqual([...upper, ...lower].map(({ key }) => key).filter((key) => key !== 'own').sort())
    expect(step.value['matt-4']!.join()).toMatch(/dark/)
  })
})
