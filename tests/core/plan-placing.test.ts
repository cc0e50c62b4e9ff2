import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { EditResult } from '../../shared-core/plan/edits/changing.ts'
import { mirrorLook } from '../../shared-core/plan/edits/mirror.ts'
import { moveLight, turnLight } from '../../shared-core/plan/edits/placing.ts'
import type { Light } from '../../shared-core/plan/schema/look.ts'

const key = demoPlan.looks['dusk']!.lights['a']!

function keyAfter(made: EditResult): Light {
  if (!made.ok) throw new Error(made.message)
  return applyEdit(demoPlan, made.edit).looks['dusk']!.lights['a']!
}

const reach = ({ place, aim }: Light): number =>
  Math.sqrt((aim.xMetres - place.xMetres) ** 2 + (aim.yMetres - place.yMetres) ** 2 + (aim.zMetres - place.zMetres) ** 2)

describe('moving', () => {
  it('keeps the aim where it was', () => {
    const moved = keyAfter(moveLight(demoPlan, 'dusk', 'a', { xMetres: -1 }))
    expect(moved.place).toEqual({ ...key.place, xMetres: -1 })
    expect(moved.aim).toEqual(key.aim)
  })

  it('carries the aim along when asked', () => {
    const moved = keyAfter(moveLight(demoPlan, 'dusk', 'a', { xMetres: key.place.xMetres + 0.5, zMetres: key.place.zMetres - 0.2 }, 'carry'))
    expect(moved.aim.xMetres).toBeCloseTo(key.aim.xMetres + 0.5, 12)
    expect(moved.aim.yMetres).toBe(key.aim.yMetres)
    expect(moved.aim.zMetres).toBeCloseTo(key.aim.zMetres - 0.2, 12)
  })
})

describe('turning', () => {
  it('a quarter clockwise from above takes a beam along y to one along x', () => {
    const place = { xMetres: 0, yMetres: 0, zMetres: 1 }
    const lights = { a: { ...key, place, aim: { xMetres: 0, yMetres: 2, zMetres: 1 } } }
    const plan = { ...demoPlan, looks: { dusk: { ...demoPlan.looks['dusk']!, lights } } }
    const turned = turnLight(plan, 'dusk', 'a', { turnDegrees: 90 })
    if (!turned.ok) throw new Error(turned.message)
    const { aim } = applyEdit(plan, turned.edit).looks['dusk']!.lights['a']!
    expect([aim.xMetres, aim.yMetres, aim.zMetres].map((value) => Math.round(value * 1e9) / 1e9)).toEqual([2, 0, 1])
  })

  it('never changes where the light stands or how far it throws, and never tips past the upright', () => {
    fc.assert(
      fc.property(fc.integer({ min: -720, max: 720 }), fc.integer({ min: -200, max: 200 }), (turnDegrees, tiltDegrees) => {
        const turned = keyAfter(turnLight(demoPlan, 'dusk', 'a', { turnDegrees, tiltDegrees }))
        expect(turned.place).toEqual(key.place)
        expect(reach(turned)).toBeCloseTo(reach(key), 6)
        const along = Math.sqrt((turned.aim.xMetres - key.place.xMetres) ** 2 + (turned.aim.yMetres - key.place.yMetres) ** 2)
        expect(along).toBeGreaterThan(0)
      }),
    )
  })
})

describe('mirroring', () => {
  it('swaps camera left and right of lights, pieces and the areas they are metered at', () => {
    const mirrored = mirrorLook(demoPlan, 'dusk')
    if (!mirrored.ok) throw new Error(mirrored.message)
    const look = applyEdit(demoPlan, mirrored.edit).looks['dusk']!
    expect(look.lights['a']?.place.xMetres).toBe(0.75)
    expect(look.lights['b']).toMatchObject({ serves: 'jaw-left', aim: { xMetres: -0.05 } })
    expect(look.pieces['flag-b']?.place.xMetres).toBe(-0.8)
    expect(look.lights['d']).toEqual(demoPlan.looks['dusk']!.lights['d'])
  })

  it('twice is the look as it was', () => {
    for (const lookId of Object.keys(demoPlan.looks)) {
      const once = mirrorLook(demoPlan, lookId)
      if (!once.ok) throw new Error(once.message)
      const there = applyEdit(demoPlan, once.edit)
      const back = mirrorLook(there, lookId)
      if (!back.ok) throw new Error(back.message)
      expect(there).not.toEqual(demoPlan)
      expect(applyEdit(there, back.edit)).toEqual(demoPlan)
    }
  })
})
