import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lightRows, type LightColumn } from '../../client/floor/list/lightRows.ts'
import { formatNumber, parseNumber, placeAtDistance, stepNumber, type NumberRow, type ThingNumber } from '../../client/floor/list/numbers.ts'
import { backdropRows, cameraRows, pieceRows, pointRows, subjectRows } from '../../client/floor/list/otherRows.ts'
import { distance } from '../../shared-core/arithmetic/vector.ts'
import { demoLookId as lookId, demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { planSchema, type Plan } from '../../shared-core/plan/schema/plan.ts'

// A number of the list is right when typing a value makes the plan read that value back, and nothing else of that thing
// moves that should not.

const look = plan.looks[lookId]!
const pieceKept = Object.entries(look.pieces)[0]!

function set(number: ThingNumber | null, value: number): Plan {
  const result = number?.edit(plan, lookId, value)
  if (!result?.ok) throw new Error(result?.message ?? 'no such number')
  const edited = applyEdit(plan, result.edit)
  expect(planSchema.safeParse(edited).success).toBe(true)
  return edited
}

function columnsOf(of: Plan): LightColumn[] {
  return Object.entries(of.looks[lookId]!.lights).map(([id, light]) => ({ id, light, served: [0, -0.1, 1.55] as const }))
}

function expectReadsBack<Column>(rows: readonly NumberRow<Column>[], columnIn: (of: Plan) => Column, tryValue: (number: ThingNumber, label: string) => number) {
  for (const row of rows) {
    const number = row.numberOf(columnIn(plan))
    if (number === null) continue
    const value = tryValue(number, row.label)
    const readBack = row.numberOf(columnIn(set(number, value)))!.value
    expect(Math.abs(readBack - value), row.label).toBeLessThan(0.06)
  }
}

const nearby = (number: ThingNumber) => (number.unit === 'metres' ? number.value + 0.31 : number.value > 0 ? number.value - 12 : number.value + 12)

describe('the list', () => {
  it('sets every number of every light to what was typed', () => {
    columnsOf(plan).forEach((_, i) => expectReadsBack(lightRows, (of) => columnsOf(of)[i]!, nearby))
  })

  it('sets every number of pieces, points, camera, subject and paper', () => {
    const withPoint: Plan = {
      ...plan,
      looks: { ...plan.looks, [lookId]: { ...look, points: { p: { label: 'Product', place: { xMetres: 0, yMetres: 0, zMetres: 1 }, facingDegrees: 0, tiltDegrees: 0, swatch: '#777777' } } } },
    }
    expectReadsBack(pieceRows, (of) => ({ id: pieceKept[0], piece: of.looks[lookId]!.pieces[pieceKept[0]]! }), nearby)
    expectReadsBack(cameraRows, (of) => of.looks[lookId]!.camera, nearby)
    expectReadsBack(subjectRows, (of) => of.looks[lookId]!.subject, nearby)
    expectReadsBack(backdropRows, (of) => of.looks[lookId]!.backdrop, (number) => number.value - 0.31)
    for (const row of pointRows) {
      const number = row.numberOf({ id: 'p', point: withPoint.looks[lookId]!.points.p! })!
      const result = number.edit(withPoint, lookId, 0.5)
      if (!result.ok) throw new Error(result.message)
      const point = applyEdit(withPoint, result.edit).looks[lookId]!.points.p!
      expect(row.numberOf({ id: 'p', point })!.value).toBe(0.5)
    }
  })

  it('keeps a light where it stands when it is turned or tilted, and its aim as far away', () => {
    const column = columnsOf(plan)[0]!
    for (const label of ['Turn', 'Tilt']) {
      const number = lightRows.find((row) => row.label === label)!.numberOf(column)!
      const turned = set(number, number.value + 7).looks[lookId]!.lights[column.id]!
      expect(turned.place).toEqual(column.light.place)
      const reach = ({ place, aim }: typeof turned) =>
        distance([place.xMetres, place.yMetres, place.zMetres], [aim.xMetres, aim.yMetres, aim.zMetres])
      expect(reach(turned)).toBeCloseTo(reach(column.light), 6)
    }
  })

  it('has no tilt for a V-flat and no opening for a flag', () => {
    const flag = { id: 'x', piece: { ...pieceKept[1], kind: 'flag' as const } }
    const flat = { id: 'x', piece: { ...pieceKept[1], kind: 'v-flat' as const } }
    const row = (label: string) => pieceRows.find((one) => one.label === label)!
    expect(row('Tilt').numberOf(flat)).toBeNull()
    expect(row('Opened').numberOf(flag)).toBeNull()
    expect(row('Opened').numberOf(flat)).not.toBeNull()
  })
})

describe('distance from the place', () => {
  it('is what was asked for, on the line on which the light stands', () => {
    const metre = fc.double({ min: -3, max: 3, noNaN: true })
    fc.assert(fc.property(fc.tuple(metre, metre, metre), fc.double({ min: 0.1, max: 6, noNaN: true }), (place, metres) => {
      const served = [4, 0.3, 1.5] as const
      const moved = placeAtDistance(place, served, metres)
      if (!moved.ok) throw new Error(moved.message)
      expect(distance(moved.place, served)).toBeCloseTo(metres, 9)
      // On the same line: the way there and the way on add up.
      const whole = distance(place, served)
      expect(Math.abs(distance(place, moved.place) - Math.abs(whole - metres))).toBeLessThan(1e-9)
    }))
  })

  it('is refused in words where it means nothing', () => {
    expect(placeAtDistance([1, 1, 1], [1, 1, 1], 1)).toMatchObject({ ok: false })
    expect(placeAtDistance([1, 1, 1], [2, 1, 1], 0)).toMatchObject({ ok: false })
  })
})

describe('numbers as they are written', () => {
  it('come back as they went out, to the centimetre and to the half inch', () => {
    fc.assert(fc.property(fc.double({ min: -9, max: 9, noNaN: true }), (metres) => {
      for (const [units, tolerance] of [['metric', 0.00501], ['imperial', 0.0254 / 4 + 1e-6]] as const) {
        const read = parseNumber({ unit: 'metres' }, units)(formatNumber({ unit: 'metres' }, units)(metres))
        if (!read.ok) throw new Error(read.message)
        expect(Math.abs(read.value - metres)).toBeLessThanOrEqual(tolerance)
      }
    }))
  })

  it('step by a centimetre or a degree, by ten with Shift, by a tenth with Alt', () => {
    const step = stepNumber({ unit: 'metres' })
    expect(step(1.14, 1, 'plain')).toBe(1.15)
    expect(step(1.14, -1, 'shift')).toBe(1.04)
    expect(step(1.14, 1, 'alt')).toBe(1.141)
    expect(stepNumber({ unit: 'degrees' })(45, 1, 'plain')).toBe(46)
  })
})
