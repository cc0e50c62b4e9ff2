import { describe, expect, it } from 'vitest'
import { parseWants } from '../../shared-core/ask/parseWants.ts'
import type { Want } from '../../shared-core/ask/want.ts'
import { wantWords } from '../../shared-core/ask/wantWords.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { usualPoint } from '../../shared-core/plan/usual/pieces.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

const look = demoPlan.looks.dusk!

function wants(text: string, plan: Plan = demoPlan): readonly Want[] {
  const read = parseWants(text, plan, plan.looks.dusk!)
  if (!read.ok) throw new Error(`${text}: ${read.message}`)
  return read.wants
}

function refusal(text: string): string {
  const read = parseWants(text, demoPlan, look)
  expect(read.ok, text).toBe(false)
  return read.ok ? '' : read.message
}

describe('wants as people type them', () => {
  it('reads a whole wish', () => {
    expect(wants('paper -1.5, camera-right jaw +0.5 in apricot, white behind, lips true, f/8')).toEqual([
      { kind: 'area-level', areaId: 'background-centre', stops: -1.5 },
      { kind: 'area-gel', areaId: 'jaw-right', gelIds: ['apricot'], stops: 0.5 },
      { kind: 'white-behind' },
      { kind: 'reads-true', areaId: 'lips' },
      { kind: 'aperture', fNumber: 8 },
    ])
  })

  it.each([
    ['C -2', 'c', -2], ['c minus two', 'c', -2], ['light B +1/3', 'b', 1 / 3], ['C+1', 'c', 1], ['D half a stop under', 'd', -0.5],
    ['C −1⅓', 'c', -4 / 3], ['C: -1', 'c', -1],
  ])('%s is a light’s own level', (text, lightId, stops) => {
    const [want] = wants(text)
    expect(want).toMatchObject({ kind: 'light-level', lightId })
    expect((want as { stops: number }).stops).toBeCloseTo(stops, 12)
  })

  it.each([
    ['nose 0', 'nose', 0], ['the nose 0', 'nose', 0], ['right cheek -1', 'cheek-right', -1], ['cheek right -1', 'cheek-right', -1],
    ['camera-right cheek -1', 'cheek-right', -1], ['Camera right cheek -1', 'cheek-right', -1], ['jaw camera left -1', 'jaw-left', -1],
    ['background -1,5', 'background-centre', -1.5], ['paper 1 and a half under', 'background-centre', -1.5],
    ['background top left -2', 'background-top-left', -2], ['rear jaw right +1', 'rear-jaw-right', 1], ['mouth -0.3', 'lips', -0.3],
  ])('%s is the level of an area', (text, areaId, stops) => {
    expect(wants(text)).toEqual([{ kind: 'area-level', areaId, stops }])
  })

  it.each<[string, string[], number | null]>([
    ['right jaw in deep violet', ['deep-violet'], null], ['right jaw in Violet', ['violet'], null],
    ['right jaw in violet -1', ['violet'], -1], ['right jaw -1 1/3 with apricot + moss', ['apricot', 'moss'], -4 / 3],
    ['right jaw +0.5 in clear', [], 0.5], ['right jaw in neutral, 1 stop', ['neutral-1'], null],
  ])('%s is an area in a sheet', (text, gelIds, stops) => {
    const [want] = wants(text)
    expect(want).toMatchObject({ kind: 'area-gel', areaId: 'jaw-right', gelIds })
    const read = (want as { stops: number | null }).stops
    if (stops === null) expect(read).toBeNull()
    else expect(read).toBeCloseTo(stops, 12)
  })

  it.each(['lips true', 'lips read true', 'the lips must read true', 'true lips', 'lips must be true'])('%s', (text) => {
    expect(wants(text)).toEqual([{ kind: 'reads-true', areaId: 'lips' }])
  })

  it.each(['white behind', 'white', 'clean white background', 'paper white', 'White behind'])('%s', (text) => {
    expect(wants(text)).toEqual([{ kind: 'white-behind' }])
  })

  it.each([['f/11', 8 * Math.SQRT2], ['f8', 8], ['F 5.6', 4 * Math.SQRT2], ['f/8.3', 8 * 2 ** 0.15]])('%s', (text, fNumber) => {
    const [want] = wants(text)
    expect(want).toMatchObject({ kind: 'aperture' })
    expect((want as { fNumber: number }).fNumber).toBeCloseTo(fNumber, 9)
  })

  it('reads film speeds, several signs between parts, and points somebody added', () => {
    expect(wants('iso 400')).toEqual([{ kind: 'iso', isoSpeed: 400 }])
    expect(wants('ISO 100; A 0\nlips true and white behind').map(({ kind }) => kind)).toEqual(['iso', 'light-level', 'reads-true', 'white-behind'])
    const point = { ...usualPoint, label: 'Pack shot', place: { xMetres: 0, yMetres: 0, zMetres: 1 } }
    const plan = { ...demoPlan, looks: { ...demoPlan.looks, dusk: { ...look, points: { p1: point } } } }
    expect(wants('pack shot -1', plan)).toEqual([{ kind: 'area-level', areaId: 'p1', stops: -1 }])
  })

  it('says a want so that it is read again as the same', () => {
    const said = wants('paper -1.5, right jaw +0.5 in apricot, white behind, lips true, f/8, iso 400, C -2, left cheek in neutral, 1 stop')
    for (const want of said) expect(wants(wantWords(want, demoPlan, look))).toEqual([want])
  })

  it('names the part it does not understand, and what it would', () => {
    expect(refusal('paper -1, banana -1')).toMatch(/“banana -1”.*camera-right jaw.*\(A, B, C, D\)/)
    expect(refusal('paper bright')).toMatch(/“paper bright”.*-2/)
    expect(refusal('paper in tangerine')).toMatch(/“tangerine”.*Apricot/)
    expect(refusal('jaw +1')).toMatch(/Which one: camera-left or camera-right jaw\?/)
    expect(refusal('iso 1')).toMatch(/“iso 1”.*200/)
    expect(refusal('f/900')).toMatch(/“f\/900”/)
    expect(refusal('A -1, A -2')).toMatch(/“A -2”/)
    expect(refusal('A')).toMatch(/“A”/)
    expect(refusal('')).toMatch(/paper -1\.5/)
    expect(refusal('x'.repeat(5000))).toMatch(/too long/)
    expect(refusal('constructor -1')).toMatch(/“constructor -1”/)
  })
})
