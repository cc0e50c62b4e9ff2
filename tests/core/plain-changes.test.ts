import { readFileSync } from 'node:fs'
import { converter } from 'culori'
import { describe, expect, it } from 'vitest'
import { compareLooks } from '../../shared-core/compare/changes.ts'
import { effectsOf, type LookEffects } from '../../shared-core/compare/effects.ts'
import { askAgain, askAgainPlainly } from '../../shared-core/compare/visibility.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit, type Json } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(new Uint8Array(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url))))
const LOOK = 'dusk'
const look = demoPlan.looks[LOOK]!
const lab = converter('lab65')

function changed(...changes: readonly (readonly [path: string, value: Json])[]): Plan {
  return applyEdit(demoPlan, { name: 'test', changes: changes.map(([path, set]) => ({ path: ['looks', LOOK, ...path.split('/')], set })) })
}

function effects(after: Plan): LookEffects {
  const steps = effectsOf(compareLooks(demoPlan, LOOK, after, LOOK), asset)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** How much lighter each area is drawn, by another library. */
function lighterBy(after: Plan): ReadonlyMap<string, number> {
  const [was, is] = [predict(demoPlan, LOOK), predict(after, LOOK)]
  return new Map(is.areas.map(({ id, label, colour }) => [label, lab(colour.display)!.l - lab(was.areas.find((area) => area.id === id)!.colour.display)!.l]))
}

const joules = (id: string, times: number): readonly [string, Json] => [`lights/${id}/energyJoules`, look.lights[id]!.energyJoules * times]
const OTHER_SET: readonly (readonly [string, Json])[] = [
  joules('c', 2), joules('a', 0.5), ['lights/b/gelIds', ['orange']], ['lights/d/gelIds', []], ['lights/d/sandbag', !look.lights['d']!.sandbag], ['lights/a/note', 'clamp'],
  ['lights/c/place/xMetres', look.lights['c']!.place.xMetres + 0.3], ['camera/fNumber', look.camera.fNumber * 1.5], ['camera/isoSpeed', look.camera.isoSpeed * 2], ['camera/whiteBalanceKelvin', look.camera.whiteBalanceKelvin + 900],
  ['camera/focalLengthMillimetres', look.camera.focalLengthMillimetres + 15], ['subject/lips', '#903848'], ['finish/contrast', look.finish.contrast + 0.2], ['backdrop/swatch', '#80706a'],
]

describe('changes in plain words', () => {
  it('name lights by what they are for, and have no number, letter of a light or word of the meter in them', () => {
    const { changes } = effects(changed(...OTHER_SET))
    expect(changes.length).toBe(OTHER_SET.length)
    for (const { words, plain } of changes) {
      for (const line of [plain.words, ...plain.effects]) {
        expect(line, words).not.toMatch(/\d|\bstops?\b|\b[ABCD]\b|[Ff]\/|ISO|[Kk]elvin|undefined/)
        expect(line, words).toMatch(/[a-z]/)
      }
    }
  })

  // Twice the energy is twice the light, half of it half: what is said of an area goes the way another library sees it go.
  it.each([
    ['c', 1.9, 'the light on the shadow side is brighter'], ['c', 0.5, 'the light on the shadow side is dimmer'],
    ['a', 0.5, 'the light from the front is dimmer'], ['d', 2, 'the light on the background is brighter'],
  ] as const)('%s at %d times its energy: %s', (id, times, words) => {
    const after = changed(joules(id, times))
    const [change] = effects(after).changes
    expect(change!.plain.words).toBe(words)
    const lighter = lighterBy(after)
    const told = change!.plain.effects.flatMap((line) => {
      const [, way, label] = /(brighter|darker) on the (.+)$/.exec(line) ?? []
      return way !== undefined && lighter.has(label!) ? [{ way, by: lighter.get(label!)! }] : []
    })
    for (const { way, by } of told) expect(Math.sign(by)).toBe(way === 'brighter' ? 1 : -1)
    expect(change!.plain.effects.some((line) => line.includes(times > 1 ? 'brighter' : 'darker'))).toBe(true)
  })

  it('say whether who said yes is asked again just where the photographer\'s limit says so', () => {
    for (const greatest of [0, 0.9, 1, 1.9, 2, 2.1, 5]) {
      for (const limit of [0.5, 2, 4]) {
        const plainly = askAgainPlainly({ mean: 0, greatest }, limit, true)
        expect(plainly.isNeeded).toBe(askAgain({ mean: 0, greatest }, limit).isNeeded)
        expect(plainly.words).toMatch(plainly.isNeeded ? /You will be asked again$/ : /You will not be asked again$/)
        expect(plainly.words).not.toMatch(/\d/)
        expect(askAgainPlainly({ mean: 0, greatest }, limit, false).words).not.toMatch(/You/)
      }
    }
  })
})
