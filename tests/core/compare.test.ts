import { readFileSync } from 'node:fs'
import { converter, differenceCiede2000 } from 'culori'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareLooks } from '../../shared-core/compare/changes.ts'
import { effectsOf, type LookEffects } from '../../shared-core/compare/effects.ts'
import { frameColours } from '../../shared-core/compare/frameColours.ts'
import { movedDifferences, pixelDifferences } from '../../shared-core/compare/frameDifference.ts'
import { COMPARED_WIDTH_PIXELS } from '../../shared-core/compare/shownLook.ts'
import { askAgain } from '../../shared-core/compare/visibility.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit, type Json, type PlanChange } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(new Uint8Array(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url))))
const LOOK = 'dusk'
const look = demoPlan.looks[LOOK]!
const HEIGHT = (COMPARED_WIDTH_PIXELS * look.camera.sensorHeightMillimetres) / look.camera.sensorWidthMillimetres

function changed(plan: Plan, ...changes: readonly (readonly [path: string, value: Json])[]): Plan {
  return applyEdit(plan, { name: 'test', changes: changes.map(([path, set]): PlanChange => ({ path: path.split('/'), set })) })
}

function effects(before: Plan, after: Plan, lookAfter = LOOK): LookEffects {
  const steps = effectsOf(compareLooks(before, LOOK, after, lookAfter), asset)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

const byPath = (effect: LookEffects) => Object.fromEntries(effect.changes.map((change) => [change.key, change]))

// CIEDE2000 of two Frames by a general library alone: culori from bytes to difference. Bytes are rounded, which is up to
// a step in the dark; so what is asked of the mean is to be within what rounding alone may do.

const toLab = converter('lab65')
const toRgb = converter('rgb')
const difference = differenceCiede2000()
const size = { width: COMPARED_WIDTH_PIXELS, height: HEIGHT, soloLightId: null, coarse: false }
const ROUNDED_MEAN = 0.35
const pictures = new LookPicture(asset)

function judged(one: Plan, other: Plan): { mean: number; exceeded: number; area: number } {
  const [a, b] = [one, other].map((plan) => pictures.draw(plan, LOOK, size).rgba)
  const colourAt = (pixels: Uint8ClampedArray, at: number) =>
    toLab({ mode: 'rgb', r: pixels[at]! / 255, g: pixels[at + 1]! / 255, b: pixels[at + 2]! / 255 })
  const all: number[] = []
  for (let at = 0; at < a!.length; at += 4) all.push(difference(colourAt(a!, at), colourAt(b!, at)))
  all.sort((x, y) => x - y)
  const [areasOne, areasOther] = [one, other].map((plan) => predict(plan, LOOK).areas.filter(({ inFrame }) => inFrame))
  const area = Math.max(...areasOne!.map(({ id, colour }) => {
    const now = areasOther!.find((another) => another.id === id)
    return now === undefined ? 0 : difference(colour.display, now.colour.display)
  }))
  return { mean: all.reduce((sum, value) => sum + value, 0) / all.length, exceeded: all[Math.floor(0.995 * all.length)]!, area }
}

const light = (id: string) => `looks/${LOOK}/lights/${id}`

describe('changes since', () => {
  it('are told one by one in the words of the trade, and made and taken back one by one', () => {
    const now = changed(demoPlan,
      [`${light('c')}/energyJoules`, look.lights['c']!.energyJoules * 2], [`${light('b')}/sandbag`, !look.lights['b']!.sandbag],
      [`${light('a')}/place/xMetres`, look.lights['a']!.place.xMetres - 0.15], [`looks/${LOOK}/camera/fNumber`, 8 * Math.SQRT2], ['brief', 'Other words'])
    const { changes, before, after } = compareLooks(demoPlan, LOOK, now, LOOK)
    expect(Object.fromEntries(changes.map(({ key, words }) => [key, words]))).toEqual({
      'lights/c/power': 'C power +1.0', 'lights/b/sandbag': `B sandbag ${look.lights['b']!.sandbag ? 'off' : 'on'}`,
      'lights/a/place': expect.stringMatching(/^A \d+ cm /) as string, 'camera/fNumber': 'f/8 to f/11', 'brief': 'the brief changed',
    })
    expect(changes.reduce((plan, { make }) => applyEdit(plan, make), before).looks).toEqual(now.looks)
    expect(changes.reduce((plan, { takeBack }) => applyEdit(plan, takeBack), after).looks).toEqual(demoPlan.looks)
  })

  it('of a light that was added with a gel of its own can be made alone', () => {
    const gel = Object.values(demoPlan.gels)[0]!
    const now = changed(demoPlan, ['gels/new', { ...gel, name: 'New' } as unknown as Json], [light('z'), { ...look.lights['b']!, letter: 'Z', gelIds: ['new'] } as unknown as Json])
    const { changes, before } = compareLooks(demoPlan, LOOK, now, LOOK)
    expect(changes.map(({ key, words }) => [key, words])).toContainEqual(['lights/z', 'Z added'])
    const alone = applyEdit(before, changes.find(({ key }) => key === 'lights/z')!.make)
    expect(alone.gels['new']?.name).toBe('New')
  })

  it('tell of settings what they were and are, and of the kit what came and went', () => {
    const gel = Object.values(demoPlan.gels)[0]!
    const { isoSpeed, whiteBalanceKelvin } = look.camera
    const now = changed(demoPlan,
      [`looks/${LOOK}/camera/isoSpeed`, isoSpeed * 2], [`looks/${LOOK}/camera/whiteBalanceKelvin`, whiteBalanceKelvin + 500],
      ['gels/new', { ...gel, name: 'Spare' } as unknown as Json], ['room/surfaces/ceiling', '#202020'])
    const { changes } = compareLooks(demoPlan, LOOK, now, LOOK)
    expect(changes.map(({ words }) => words)).toEqual([
      `ISO ${isoSpeed} to ${isoSpeed * 2}`, `balanced for ${whiteBalanceKelvin} K to ${whiteBalanceKelvin + 500} K`, 'other walls', 'kit: Spare added',
    ])
    expect(applyEdit(now, changes.at(-1)!.takeBack).gels).toEqual(demoPlan.gels)
    expect(compareLooks(now, LOOK, demoPlan, LOOK).changes.map(({ words }) => words)).toContain('kit: Spare taken out')
  })

  it('hold lights of two looks for the same by their letters', () => {
    const { changes } = compareLooks(demoPlan, LOOK, demoPlan, 'dusk-draft-1')
    expect(changes.length).toBeGreaterThan(0)
    expect(changes.filter(({ words }) => /added|taken out/.test(words))).toEqual([])
  })

  it('tell a moved key as visible and first, a sandbag and a note as not visible', () => {
    const { place } = look.lights['a']!
    const now = changed(demoPlan, [`${light('b')}/sandbag`, !look.lights['b']!.sandbag], [`${light('a')}/note`, 'clamp'], [`${light('a')}/place`, { ...place, xMetres: place.xMetres + 0.25, yMetres: place.yMetres + 0.3 }])
    const { changes, visibility } = effects(demoPlan, now)
    expect(changes.map(({ key, visibility: seen }) => [key, seen])).toEqual([
      ['lights/a/place', 'visible'], expect.arrayContaining(['not-visible']) as unknown, expect.arrayContaining(['not-visible']) as unknown,
    ])
    expect([visibility, changes[1]!.mean, changes[2]!.mean]).toEqual(['visible', 0, 0])
    expect(changes[0]!.effects.length).toBeGreaterThan(0)
  })

  it('that make up for each other are both told, though the picture has hardly moved', () => {
    const now = changed(demoPlan, [`looks/${LOOK}/camera/isoSpeed`, look.camera.isoSpeed * 2], [`looks/${LOOK}/camera/fNumber`, look.camera.fNumber * Math.SQRT2])
    const all = effects(demoPlan, now)
    expect(all.visibility).toBe('not-visible')
    expect(all.changes.map(({ visibility }) => visibility)).toEqual(['visible', 'visible'])
    expect(askAgain(all, 2).isNeeded).toBe(false)
  })

  it('of a light that was off are told by what they do once it is on', () => {
    const off = changed(demoPlan, [`${light('c')}/on`, false])
    const other = Object.keys(demoPlan.gels).find((id) => !look.lights['c']!.gelIds.includes(id))!
    const now = changed(demoPlan, [`${light('c')}/gelIds`, [other]])
    const { changes, before, after } = compareLooks(off, LOOK, now, LOOK)
    const gel = changes.find(({ key }) => key === 'lights/c/gel')!
    // Made alone in the look before, the gel hangs on a light that gives nothing; taken back from the look after, it shows.
    const [alone, last] = [judged(before, applyEdit(before, gel.make)), judged(after, applyEdit(after, gel.takeBack))]
    expect(alone).toEqual({ mean: 0, exceeded: 0, area: 0 })
    expect(last.exceeded).toBeGreaterThan(2)
    const found = byPath(effects(off, now))['lights/c/gel']!
    expect(found.visibility).toBe('visible')
    expect(Math.abs(found.mean - last.mean)).toBeLessThan(ROUNDED_MEAN)
    expect(found.greatest).toBeGreaterThan(2)
    expect(found.effects.length).toBeGreaterThan(0)
  })

  it('agree in order and in what is visible with two Frames judged by another library, whatever was edited', { timeout: 120_000 }, () => {
    const edits: fc.Arbitrary<readonly [string, Json]>[] = [
      ...['a', 'b', 'c', 'd'].map((id) => fc.double({ min: -1.5, max: 1, noNaN: true }).map((stops): readonly [string, Json] =>
        [`${light(id)}/energyJoules`, Math.max(1, look.lights[id]!.energyJoules * Math.pow(2, stops))])),
      ...['a', 'b', 'c', 'd'].map((id) => fc.integer({ min: -15, max: 15 }).map((hundredths): readonly [string, Json] =>
        [`${light(id)}/energyJoules`, look.lights[id]!.energyJoules * Math.pow(2, hundredths / 100)])),
      ...['a', 'c'].map((id) => fc.double({ min: -0.3, max: 0.3, noNaN: true }).map((by): readonly [string, Json] =>
        [`${light(id)}/place/yMetres`, look.lights[id]!.place.yMetres + by])),
      fc.constantFrom(...Object.keys(demoPlan.gels)).map((gel): readonly [string, Json] => [`${light('b')}/gelIds`, [gel]]),
      fc.boolean().map((on): readonly [string, Json] => [`${light('d')}/sandbag`, on]),
      fc.string({ maxLength: 20 }).map((text): readonly [string, Json] => [`${light('c')}/note`, text]),
      fc.string({ minLength: 1, maxLength: 20 }).map((text): readonly [string, Json] => [`looks/${LOOK}/name`, text]),
      fc.double({ min: 0, max: 0.4, noNaN: true }).map((value): readonly [string, Json] => [`looks/${LOOK}/finish/contrast`, value]),
      fc.double({ min: -0.02, max: 0.02, noNaN: true }).map((by): readonly [string, Json] => [`looks/${LOOK}/camera/place/zMetres`, look.camera.place.zMetres + by]),
      fc.constantFrom(7.1, 8, 9, 11).map((fNumber): readonly [string, Json] => [`looks/${LOOK}/camera/fNumber`, fNumber]),
      fc.constantFrom('#a04050', '#903848', '#c06a70').map((swatch): readonly [string, Json] => [`looks/${LOOK}/subject/lips`, swatch]),
    ]
    const wasSeen = new Set<string>()
    fc.assert(fc.property(fc.tuple(...edits), fc.uniqueArray(fc.nat({ max: edits.length - 1 }), { minLength: 2, maxLength: 4 }), (made, chosen) => {
      const after = changed(demoPlan, ...chosen.map((index) => made[index]!))
      const { changes, before } = compareLooks(demoPlan, LOOK, after, LOOK)
      const found = byPath(effects(demoPlan, after))
      const truth = changes.map(({ key, make, takeBack }) => {
        const [alone, back] = [judged(before, applyEdit(before, make)), judged(after, applyEdit(after, takeBack))]
        return { key, mean: Math.max(alone.mean, back.mean), most: Math.max(alone.exceeded, back.exceeded, alone.area, back.area) }
      })
      const listed = Object.keys(found)
      for (const { key, mean, most } of truth) {
        const { visibility, mean: said } = found[key]!
        wasSeen.add(visibility)
        expect(Math.abs(said - mean), key).toBeLessThan(ROUNDED_MEAN)
        // What a library sees in rounded pictures by two steps is told; what it does not see by one is not told as visible.
        if (most >= 2) expect(visibility, `${key} ${most}`).not.toBe('not-visible')
        if (most < 1) expect(visibility, `${key} ${most}`).not.toBe('visible')
        if (most === 0) expect(visibility, key).toBe('not-visible')
        for (const other of truth) {
          if (mean - other.mean > 2 * ROUNDED_MEAN) expect(listed.indexOf(key), `${key} before ${other.key}`).toBeLessThan(listed.indexOf(other.key))
        }
      }
    }), { numRuns: 30, seed: 20_261_125 })
    expect([...wasSeen].sort()).toEqual(['just-visible', 'not-visible', 'visible'])
  })

  it('are judged on the picture\'s own colours, before they are rounded', () => {
    const picture = pictures.draw(demoPlan, LOOK, size)
    const colours = frameColours(picture, pictures.parts(demoPlan, LOOK, size).development)
    const brighter = changed(demoPlan, [`${light('c')}/energyJoules`, look.lights['c']!.energyJoules * 1.5])
    const codes = (at: number) => {
      const { r, g, b } = toRgb({ mode: 'lab65', l: colours[at]!, a: colours[at + 1]!, b: colours[at + 2]! })
      return [r, g, b].map((value) => 255 * value)
    }
    for (let pixel = 0; pixel < picture.width * picture.height; pixel++) {
      for (const [k, code] of codes(3 * pixel).entries()) expect(Math.abs(code - picture.rgba[4 * pixel + k]!)).toBeLessThan(1)
    }
    const later = pictures.draw(brighter, LOOK, size)
    const laterColours = frameColours(later, pictures.parts(brighter, LOOK, size).development)
    const labAt = (from: Float64Array, pixel: number) => ({ mode: 'lab65' as const, l: from[3 * pixel]!, a: from[3 * pixel + 1]!, b: from[3 * pixel + 2]! })
    for (const [pixel, found] of pixelDifferences(colours, laterColours).entries()) {
      expect(found).toBeCloseTo(difference(labAt(colours, pixel), labAt(laterColours, pixel)), 6)
    }
  })

  it('of the lips alone are visible, though lips are a small part of the Frame', () => {
    const [{ visibility, mostAt, mean }] = effects(demoPlan, changed(demoPlan, [`looks/${LOOK}/subject/lips`, '#b0505a'])).changes as [LookEffects['changes'][number]]
    expect([visibility, mostAt]).toEqual(['visible', 'lips'])
    expect(mean).toBeLessThan(0.05)
  })

  it('of two hundredths of a stop are not visible, though they tip the rounding of a dark background', () => {
    const [{ visibility, greatest }] = effects(demoPlan, changed(demoPlan, [`${light('d')}/energyJoules`, look.lights['d']!.energyJoules * Math.pow(2, 0.02)])).changes as [LookEffects['changes'][number]]
    expect(visibility).toBe('not-visible')
    expect(greatest).toBeGreaterThan(0)
  })

  it('ask the client again past the steps that were agreed, and not before', () => {
    const all = effects(demoPlan, changed(demoPlan, [`${light('c')}/energyJoules`, look.lights['c']!.energyJoules * 1.6]))
    expect(askAgain(all, Math.floor(all.greatest)).isNeeded).toBe(true)
    expect(askAgain(all, Math.ceil(all.greatest)).isNeeded).toBe(false)
    expect(askAgain({ mean: 0, greatest: 0 }, 2).words).toBe('Nothing of the picture has visibly moved')
  })

  it('take an edge that moved by one pixel for none, and a catchlight that came for one', () => {
    const width = 9
    const picture = (lightAt: (x: number, y: number) => boolean) =>
      Float64Array.from({ length: 3 * width * width }, (_, at) => (at % 3 > 0 ? 0 : lightAt(Math.floor(at / 3) % width, Math.floor(at / 3 / width)) ? 90 : 20))
    const [edge, moved] = [picture((x) => x > 4), picture((x) => x > 5)]
    expect(Math.max(...pixelDifferences(edge, moved))).toBeGreaterThan(10)
    expect(Math.max(...movedDifferences(edge, moved, width))).toBe(0)
    const lit = picture((x, y) => x > 4 || (x === 2 && y === 4))
    expect(Math.max(...movedDifferences(edge, lit, width))).toBeGreaterThan(10)
    expect(() => movedDifferences(edge, picture(() => true).subarray(3), width)).toThrow(RangeError)
  })
})
