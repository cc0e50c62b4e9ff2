import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, type Json } from '../../shared-core/plan/edit.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { csvText, type Cell } from '../../shared-core/kit/csv.ts'
import { layOutCuts } from '../../shared-core/kit/cutLayout.ts'
import { gelCuts } from '../../shared-core/kit/gelCuts.ts'
import { cutsCsv, orderCsv } from '../../shared-core/kit/kitCsv.ts'
import { orderList } from '../../shared-core/kit/orderList.ts'
import { orderCases } from '../../shared-core/kit/orderLine.ts'
import { rigKeyText } from '../../shared-core/rig/rig.ts'

const both = ['dusk', 'first-light']

function withSettings(settings: readonly (readonly [path: string, set: Json])[]): Plan {
  return applyEdit(demoPlan, { name: 'test', changes: settings.map(([path, set]) => ({ path: path.split('/'), set })) })
}

function listOf(plan: Plan, lookIds: readonly string[]) {
  return orderList(plan, lookIds, layOutCuts(plan, gelCuts(plan, lookIds), {}, () => 'say'))
}

const find = (plan: Plan, lookIds: readonly string[], key: string) => listOf(plan, lookIds).find((line) => line.key === key)

describe('the order list of the demo job', () => {
  // "Four 1000 Ws heads, nine stops; one spare", three reflectors, an octa, a strip, an umbrella: as its story has it.
  it('four heads are in use at once and one is spare, all of them the studio’s own', () => {
    expect(find(demoPlan, both, 'head.head-1000')).toMatchObject({ byLook: [4, 3], needed: 4, spare: 1, owned: 5, missing: 0 })
  })

  it('a thing used by both looks is brought once, as often as the look that uses most', () => {
    expect(find(demoPlan, both, 'modifier.reflector-65')).toMatchObject({ byLook: [1, 2], needed: 2, owned: 3, missing: 0 })
    expect(find(demoPlan, both, 'modifier.octa-100')).toMatchObject({ byLook: [1, 1], needed: 1 })
    expect(find(demoPlan, ['first-light'], 'modifier.strip-35x140')).toBeUndefined()
  })

  it('what the kit does not hold is to be hired, by as many as are short', () => {
    const plan = withSettings([['modifiers/reflector-65/count', 1], ['heads/head-1000/count', 3]])
    expect(find(plan, both, 'modifier.reflector-65')).toMatchObject({ owned: 1, missing: 1 })
    expect(find(plan, both, 'head.head-1000')).toMatchObject({ owned: 3, missing: 2 })
  })

  it('brings flag, scrim, board, paper, grids, and what holds them', () => {
    const names = listOf(demoPlan, both).map(({ name }) => name)
    for (const name of ['Black flag', 'White board', 'Scrim on its frame, 40 % through', 'Paper roll, mid grey', 'Fabric grid for Octa 100',
      'Fabric grid for Strip 35 × 140', 'Low stand', 'Sandbag', 'Pair of background stands with crossbar']) expect(names).toContain(name)
  })

  it('a boom over the subject brings its stand, bag and safety cable as the plan has them', () => {
    const plan = withSettings([
      ['looks/dusk/lights/a/support', 'boom'], ['looks/dusk/lights/a/safetyCable', true], ['looks/dusk/lights/a/sandbag', true],
    ])
    expect(find(plan, ['dusk'], 'grip.boom')?.needed).toBe(1)
    expect(find(plan, ['dusk'], 'grip.safety-cable')?.needed).toBe(1)
    expect(find(plan, ['dusk'], 'grip.stand')?.needed).toBe(find(demoPlan, ['dusk'], 'grip.stand')!.needed - 1)
  })

  it('lights that are off bring nothing, and gels to buy are missing', () => {
    const off = withSettings([['looks/dusk/lights/b/on', false]])
    expect(find(off, ['dusk'], 'modifier.strip-35x140')).toBeUndefined()
    const none = withSettings([['gels/violet/sheets', 0]])
    expect(find(none, ['dusk'], 'gel.violet')).toMatchObject({ needed: 1, owned: 0, missing: 1 })
  })

  it('goes case by case, with keys that a tick can be kept under', () => {
    const lines = listOf(demoPlan, Object.keys(demoPlan.looks))
    const order = lines.map((line) => orderCases.indexOf(line.case))
    expect(order).toEqual([...order].sort((a, b) => a - b))
    expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length)
    for (const { key } of lines) expect(rigKeyText.safeParse(key).success).toBe(true)
  })

  it('enough batteries for the frames: 2000 flashes at full of a head that gives 200 on a charge, kept to 70 % of each', () => {
    const plan = withSettings([
      ['heads/head-1000/supply', 'battery'], ['heads/head-1000/flashesPerChargeAtFull', 200], ['looks/dusk/framesPlanned', 2_000],
      ...['a', 'b', 'd'].map((letter) => [`looks/dusk/lights/${letter}/on`, false] as const), ['looks/dusk/lights/c/energyJoules', 1_000],
    ])
    // 2000 / (0.7 × 200) = 14.3
    expect(find(plan, ['dusk'], 'power.battery')?.needed).toBe(15)
    expect(find(plan, ['dusk'], 'power.cable')).toBeUndefined()
  })
})

/** RFC 4180, section 2, read by its own grammar. */
function csvRows(text: string): string[][] {
  const rows: string[][] = [[]]
  let at = 0
  while (at < text.length) {
    let cell = ''
    if (text[at] === '"') {
      for (at++; text[at] !== '"' || text[at + 1] === '"'; at++) {
        cell += text[at]
        if (text[at] === '"') at++
      }
      at++
    } else {
      while (at < text.length && text[at] !== ',' && text[at] !== '\r') cell += text[at++]
    }
    rows[rows.length - 1]!.push(cell)
    if (text[at] === ',') at++
    else {
      expect(text.slice(at, at + 2)).toBe('\r\n')
      at += 2
      if (at < text.length) rows.push([])
    }
  }
  return rows
}

describe('tables for a spreadsheet', () => {
  it('come back as they were, whatever is in the cells', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\r', '\n', ' ', '×', ';') })
    fc.assert(fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (rows) => {
      expect(csvRows(csvText(rows.map(([a, b]) => [`x${a}`, `x${b}`])))).toEqual(rows.map(([a, b]) => [`x${a}`, `x${b}`]))
    }), { seed: 2 })
  })

  // The first characters that OWASP's "CSV Injection" page warns of.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =HYPERLINK("x")'])('%j never reaches a spreadsheet as a formula', (text) => {
    const [[cell]] = csvRows(csvText([[text]])) as [[string]]
    expect(cell).toBe(`'${text}`)
  })

  it('keep numbers as numbers', () => {
    expect(csvText([[-1.5, 'a', NaN] satisfies Cell[]])).toBe('-1.5,a,\r\n')
  })

  it('hold the whole order and every cut, and a name that is a formula stays text', () => {
    const plan = withSettings([['gels/violet/name', '=cmd|calc'], ['heads/head-1000/name', '@head']])
    const layouts = layOutCuts(plan, gelCuts(plan, both), {}, () => 'say')
    const lines = orderList(plan, both, layouts)
    const order = csvRows(orderCsv(lines, both))
    expect(order).toHaveLength(lines.length + 1)
    expect(new Set(order.map((row) => row.length)).size).toBe(1)
    const cuts = csvRows(cutsCsv(plan, layouts))
    expect(cuts).toHaveLength(gelCuts(plan, both).length + 1)
    for (const cell of [...order, ...cuts].flat()) expect(cell).not.toMatch(/^[=@+\-\t]/)
  })
})
