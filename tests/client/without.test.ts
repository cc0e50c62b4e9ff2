import { describe, expect, it } from 'vitest'
import { ceilingAt, insteadOf, lackChoices, usualWidths } from '../../client/ask/without/lackChoices.ts'
import { areasLost, leftWords, turnWords } from '../../client/ask/without/leftWords.ts'
import { fewerHeads } from '../../shared-core/ask/fewerHeads.ts'
import type { AreaChange } from '../../shared-core/ask/visibleChange.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { removeLight, switchLight } from '../../shared-core/plan/edits/lights.ts'
import { readEdit } from '../../shared-core/plan/readEdit.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'

const lookId = 'dusk'
const words = (what: Parameters<typeof lackChoices>[2], plan = demoPlan): readonly string[] =>
  lackChoices(plan, lookId, what).flatMap(({ choices }) => choices.map((choice) => choice.words))

describe('what a look can be asked to do without', () => {
  it('offers what it burns and carries, from the kit of the demo job, and fewer heads than burn', () => {
    expect(words({ kind: 'anything' })).toEqual([
      'Without A', 'Without B', 'Without C', 'Without D', 'Three heads', 'Two heads', 'One head',
      'No Octa 100', 'No Strip 35 × 140', 'No Umbrella 165, front diffusion', 'No Reflector 65°',
      'A on Old head 1000, five stops', 'B on Old head 1000, five stops', 'C on Old head 1000, five stops', 'D on Old head 1000, five stops',
    ])
    expect(words({ kind: 'light', id: 'd' })).toEqual(['Without D', 'No Reflector 65°', 'D on Old head 1000, five stops'])
    expect(words({ kind: 'modifier', id: 'octa-100' })).toEqual(['No Octa 100'])
  })

  it('offers no light that is off or gone', () => {
    const off = switchLight(demoPlan, lookId, 'd', false)
    const gone = removeLight(demoPlan, lookId, 'd')
    if (!off.ok || !gone.ok) throw new Error('no edit')
    for (const { edit } of [off, gone]) {
      const plan = applyEdit(demoPlan, edit)
      expect(words({ kind: 'light', id: 'd' }, plan)).toEqual([])
      expect(words({ kind: 'anything' }, plan)).not.toContain('Without D')
      expect(words({ kind: 'anything' }, plan)).not.toContain('Three heads')
    }
  })

  it('another size of the kind keeps its proportions', () => {
    const choice = insteadOf(demoPlan, 'strip-35x140', 0.7, 'metric')!
    if (choice.lack.kind !== 'modifier') throw new Error('no modifier')
    expect(choice.lack.instead).toMatchObject({ kind: 'strip', widthMetres: 0.7, heightMetres: 2.8 })
    expect(insteadOf(demoPlan, 'octa-100', 1.2, 'metric')!.words).toBe('Only a 120 cm')
    expect(usualWidths(demoPlan.modifiers['umbrella-165']!)).not.toContain(1.65)
    expect(ceilingAt(2.7, 'metric').words).toBe('Ceiling at 2.70 m')
  })

  it('every choice is answered, by an edit that others take', () => {
    const predictor = createPredictor()
    for (const { choices } of lackChoices(demoPlan, lookId, { kind: 'anything' })) {
      for (const { lack, words: said } of choices) {
        const { best } = fewerHeads(demoPlan, lookId, lack, predictor)
        expect(best, said).not.toBeNull()
        expect(readEdit(JSON.parse(JSON.stringify(best!.edit))), said).not.toBeNull()
      }
    }
  })
})

describe('how much is left, in words', () => {
  const area = (difference: number, from = '#808080', to = '#808080'): AreaChange =>
    ({ areaId: 'nose', label: 'nose', difference, stops: 0, from, to })

  it('says plainly when nothing, little or all is left', () => {
    expect(leftWords({ areas: [area(0), area(1)], stops: [] })).toBe('Nobody would see the difference.')
    expect(leftWords({ areas: [area(30), area(20), area(0)], stops: [] })).toMatch(/^Not much of the look is left: 2 of 3 areas/)
    expect(leftWords({ areas: [area(40, '#808080', '#020202')], stops: [] })).toBe('Nothing is left: the picture is black.')
    expect(leftWords({ areas: [area(3), area(0), area(0)], stops: ['D does not fit'] })).toBe('1 of 3 areas look otherwise. It cannot be worked as it stands.')
  })

  it('no head at all leaves black', () => {
    const { best } = fewerHeads({ ...demoPlan, room: { ...demoPlan.room, ambientLux: 0 } }, lookId, { kind: 'heads', count: 0 }, createPredictor())
    expect(leftWords(best!)).toBe('Nothing is left: the picture is black.')
  })

  it('areas come worst first, those nobody would see not at all', () => {
    expect(areasLost([area(3), area(1), area(9)]).map(({ difference }) => difference)).toEqual([9, 3])
    expect(turnWords(area(9, '#ff0000', '#ff0000'))).toMatch(/^still /)
    expect(turnWords(area(9, '#ff0000', '#0000ff'))).toMatch(/^from .*red.* to .*blue/)
  })
})
