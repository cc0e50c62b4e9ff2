import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import type { Tick } from '../../shared-core/rig/ticks.ts'
import { marksOf, tapedFrom, type Taped } from '../../shared-core/stands/marks.ts'
import { sinceTick } from '../../shared-core/stands/sinceTick.ts'
import { standsOf, type LightStand } from '../../shared-core/stands/stand.ts'
import { standingInOrder } from '../../shared-core/stands/standOrder.ts'

const look = plan.looks['dusk']!
const prediction = createPredictor()(plan, 'dusk')

/** Where both tapes meet on the side that is said: what somebody with two tapes finds. School geometry: two circles. */
function found({ from: [one, other], side }: Taped): readonly [number, number] {
  const [x1, y1, r1] = [one.mark.xMetres, one.mark.yMetres, one.floorMetres]
  const [x2, y2, r2] = [other.mark.xMetres, other.mark.yMetres, other.floorMetres]
  const d = Math.hypot(x2 - x1, y2 - y1)
  const a = (r1 * r1 - r2 * r2 + d * d) / (2 * d)
  const h = Math.sqrt(Math.max(0, r1 * r1 - a * a))
  const [mx, my] = [x1 + (a * (x2 - x1)) / d, y1 + (a * (y2 - y1)) / d]
  const both = [1, -1].map((sign) => [mx + (sign * h * (y2 - y1)) / d, my - (sign * h * (x2 - x1)) / d] as const)
  if (side === null) return [mx, my]
  const pick = (by: (p: readonly [number, number]) => number) => [...both].sort((p, q) => by(q) - by(p))[0]!
  if (side.includes('camera right')) return pick(([x]) => x)
  if (side.includes('camera left')) return pick(([x]) => -x)
  return side.startsWith('behind') ? pick(([, y]) => y) : pick(([, y]) => -y)
}

describe('a stand taped out from two marks', () => {
  it('is found again from what is told, anywhere in the room', () => {
    const marks = marksOf(plan, look)
    fc.assert(fc.property(fc.double({ min: -2.8, max: 2.8, noNaN: true }), fc.double({ min: -5.5, max: 2.9, noNaN: true }), (x, y) => {
      const [fx, fy] = found(tapedFrom(marks, x, y))
      expect(Math.hypot(fx - x, fy - y)).toBeLessThan(0.021)
    }))
  })

  it('is never so badly placed that a centimetre on the tapes throws it 5 cm off', () => {
    const marks = marksOf(plan, look)
    fc.assert(fc.property(
      fc.double({ min: -2.5, max: 2.5, noNaN: true }), fc.double({ min: -3, max: 2.3, noNaN: true }),
      fc.double({ min: -0.01, max: 0.01, noNaN: true }), fc.double({ min: -0.01, max: 0.01, noNaN: true }),
      (x, y, slip, otherSlip) => {
        const taped = tapedFrom(marks, x, y)
        fc.pre(taped.side !== null && taped.from.every(({ floorMetres }) => floorMetres > 0.1))
        const [one, other] = taped.from
        const [fx, fy] = found({ ...taped, from: [
          { ...one, floorMetres: one.floorMetres + slip }, { ...other, floorMetres: other.floorMetres + otherSlip },
        ] })
        expect(Math.hypot(fx - x, fy - y)).toBeLessThan(0.05)
      }))
  })

  it('is measured from the T where that is as good as any', () => {
    const key = standsOf(plan, 'dusk', prediction).find(({ name }) => name === 'A')!
    expect(key.taped.from.map(({ mark }) => mark.id)).toContain('subject')
  })
})

describe('the stands of a look', () => {
  // Background gel first, key off; then edge, shade side, key: common practice, no source.
  it('come in set-up order, the gelled background first whatever its number', () => {
    expect(standsOf(plan, 'dusk', prediction).filter(({ kind }) => kind === 'light').map(({ name }) => name)).toEqual(['D', 'B', 'C', 'A'])
    const last = { ...look, lights: { ...look.lights, d: { ...look.lights['d']!, setUpOrder: 99 } } } as Look
    expect(standingInOrder(last).find(({ kind }) => kind === 'light')).toMatchObject({ id: 'd' })
  })

  it('leave out lights that are off', () => {
    const without = { ...look, lights: { ...look.lights, b: { ...look.lights['b']!, on: false } } } as Look
    expect(standingInOrder(without).some(({ id }) => id === 'b')).toBe(false)
  })

  it('tell each light’s height, way to what it serves, gel with its cut, and its care', () => {
    const stands = standsOf(plan, 'dusk', prediction).filter((stand): stand is LightStand => stand.kind === 'light')
    const [d, b] = stands as [LightStand, LightStand]
    expect(b.heightMetres).toBe(look.lights['b']!.place.zMetres)
    // Pythagoras in space, on the plan's own places.
    const [x, y, z] = prediction.areas.find(({ id }) => id === look.lights['d']!.serves)!.place
    const { place } = look.lights['d']!
    expect(d.frontToMetres).toBeCloseTo(Math.hypot(x - place.xMetres, y - place.yMetres, z - place.zMetres), 6)
    expect(d.gels).toHaveLength(1)
    expect(d.gels[0]!.longMillimetres).toBeGreaterThanOrEqual(220)
    expect(stands.every(({ cautions }) => cautions.some(({ kind }) => kind === 'capacitor'))).toBe(true)
  })
})

describe('a stand after its tick', () => {
  const tick: Tick = {
    lookId: 'dusk', by: { name: 'Tobin', atMs: 1 }, subjectXMetres: look.subject.xMetres, subjectYMetres: look.subject.yMetres,
    stand: { kind: 'light', id: 'b', as: look.lights['b']! },
  }
  const moved = (changes: readonly { readonly path: readonly string[]; readonly set: number | boolean | string[] }[]) => {
    const now = applyEdit(plan, { name: 'test', changes: changes.map(({ path, set }) => ({ path: ['looks', 'dusk', ...path], set })) })
    return { now, look: now.looks['dusk']! }
  }

  it('says nothing while nothing that is rigged has changed', () => {
    expect(sinceTick(tick, plan, look, 'metric')).toEqual([])
    const { now, look: later } = moved([{ path: ['lights', 'b', 'wantedStops'], set: 1 }])
    expect(sinceTick(tick, now, later, 'metric')).toEqual([])
  })

  it('says which way and how far, up and down, and what is to be turned', () => {
    const { place, energyJoules } = look.lights['b']!
    const { now, look: later } = moved([
      { path: ['lights', 'b', 'place', 'xMetres'], set: place.xMetres - 0.4 },
      { path: ['lights', 'b', 'place', 'zMetres'], set: place.zMetres + 0.15 },
      { path: ['lights', 'b', 'energyJoules'], set: energyJoules * 2 },
    ])
    const words = sinceTick(tick, now, later, 'metric')
    expect(words.slice(0, 2)).toEqual(['0.40 m to camera left', '0.15 m higher'])
    expect(words[2]).toMatch(/^power \+1\.0, to /)
    expect(sinceTick(tick, now, later, 'imperial')[1]).toBe('6" higher')
  })

  it('says when the mark itself has moved, and when the stand is gone', () => {
    const { now, look: later } = moved([{ path: ['subject', 'yMetres'], set: look.subject.yMetres - 0.1 }])
    expect(sinceTick(tick, now, later, 'metric')).toEqual(['the T moved 0.10 m towards the camera: tape again'])
    const { now: off, look: without } = moved([{ path: ['lights', 'b', 'on'], set: false }])
    expect(sinceTick(tick, off, without, 'metric')[0]).toContain('not in this look any more')
  })
})
