import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { brightnessWords, plainLines, seenHueWords } from '../../shared-core/predict/plainWords.ts'
import { predict } from '../../shared-core/predict/predict.ts'

describe('hues in plain words', () => {
  // K. L. Kelly, "Twenty-two colors of maximum contrast" (1965), with the ISCC-NBS names; sRGB of their centroids, from memory.
  it.each([
    ['#f3c300', /gold|yellow/], ['#875692', /purple/], ['#f38400', /orange|amber/], ['#a1caf1', /sky|blue/], ['#be0032', /red/],
    ['#008856', /green/], ['#e68fac', /pink|rose/], ['#0067a5', /blue|sky/], ['#604e97', /violet|lavender/], ['#8db600', /yellow|moss|green/],
    ['#9a4eae', /purple|violet/], ['#848482', /grey/], ['#f2f3f4', /white/], ['#222222', /black|dark grey/],
  ])('%s is called %s', (hex, name) => expect(seenHueWords(hex)).toMatch(name))
})

describe('brightness in plain words', () => {
  // The zones of exposure, V at mid-grey and a stop apart: A. Adams, "The Negative"; the words for them from memory.
  it.each([
    [-5, 'close to black'], [-4, 'close to black'], [-3, 'very dark'], [-2, 'dark'], [-1, 'dark'], [0, 'mid-bright'],
    [1, 'bright'], [2, 'very bright'], [3, 'close to white'],
  ])('%d stops from mid-grey is %s', (stops, words) => expect(brightnessWords(stops)).toBe(words))

  it('says nothing of numbers, and black where no light comes', () => {
    expect(brightnessWords(null)).toBe('black')
    for (let stops = -8; stops <= 8; stops += 0.1) expect(brightnessWords(stops)).toMatch(/^[a-z -]+$/)
  })
})

describe('a look in plain words', () => {
  // What the demo job is: a green glow behind, a clear front, a violet-gelled light from camera right.
  const plan = demoPlan
  const lookId = 'dusk'
  const words = new Map(plainLines(predict(plan, lookId)).map((line) => [line.areaId, line.words]))

  it('names hue and place as the lights were gelled, and no stops', () => {
    expect(words.get('background-centre')).toMatch(/green on the background/)
    expect(words.get('nose')).toMatch(/^its own colour on the nose/)
    expect(words.get('cheek-right')).toMatch(/(violet|purple) on the camera-right cheek/)
    for (const line of words.values()) expect(line).not.toMatch(/\d|stop|watt/)
  })

  it('speaks of what lies behind first', () => expect([...words.keys()][0]).toBe('background-centre'))
})
