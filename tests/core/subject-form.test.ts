import { describe, expect, it } from 'vitest'
import { dot, subtract } from '../../shared-core/arithmetic/vector.ts'
import { type Ellipsoid, subjectForm } from '../../shared-core/set/subjectForm.ts'
import type { SubjectAreaId } from '../../shared-core/subject/areas/subjectAreas.ts'
import { studioScene } from './studioScene.ts'

const standing = studioScene().subject
const areaOf = (id: SubjectAreaId, changes: Partial<typeof standing> = {}) =>
  subjectForm({ ...standing, ...changes }).areas.find((area) => area.id === id)!

function extent(parts: readonly Ellipsoid[], axis: 0 | 1 | 2): { low: number; high: number } {
  const reaches = parts.map((part) => {
    const reach = Math.hypot(...part.axes.map((direction, i) => direction[axis] * part.semiAxesMetres[i as 0 | 1 | 2]))
    return { low: part.centre[axis] - reach, high: part.centre[axis] + reach }
  })
  return { low: Math.min(...reaches.map(({ low }) => low)), high: Math.max(...reaches.map(({ high }) => high)) }
}

describe('the form against measured people (ANSUR II medians, US Army 2012; chin to crown from memory)', () => {
  const { parts } = subjectForm({ ...standing, heightMetres: 1.755 })
  const head = parts.filter(({ part }) => part === 'cranium' || part === 'face')

  it('a head 154 wide, 200 long and 232 high on a man of median stature, within 10 %', () => {
    const size = ([0, 1, 2] as const).map((axis) => extent(head, axis).high - extent(head, axis).low)
    const measured = [0.154, 0.2, 0.232]
    size.forEach((metres, i) => expect(Math.abs(metres / measured[i]! - 1)).toBeLessThan(0.1))
  })

  it('crown, acromion and shoulder width', () => {
    expect(Math.abs(extent(head, 2).high - 1.755)).toBeLessThan(0.02)
    const shoulders = parts.filter(({ part }) => part === 'shoulders')
    // The ridge of the shoulder stands a little over the acromion's 1.439.
    expect(Math.abs(extent(shoulders, 2).high - 1.439)).toBeLessThan(0.06)
    const wide = parts.filter(({ part }) => part === 'shoulders' || part === 'arm')
    expect(Math.abs(extent(wide, 0).high - extent(wide, 0).low - 0.509)).toBeLessThan(0.05)
  })

  it('sits with the eyes 0.804 m above a chair of about 0.45 m (the chair: common practice, no source)', () => {
    const sitting = subjectForm({ ...standing, heightMetres: 1.755, posture: 'sitting' })
    expect(Math.abs(sitting.eyes[2] - 0.804 - 0.45)).toBeLessThan(0.06)
    expect(extent(sitting.parts, 2).low).toBeGreaterThan(0)
  })
})

describe('named areas', () => {
  it('eyes at 1.62 and mouth about 1.53 on a subject of 1.74 m', () => {
    expect(subjectForm(standing).eyes[2]).toBeCloseTo(1.62, 2)
    expect(Math.abs(areaOf('lips').place[2] - 1.53)).toBeLessThan(0.015)
  })

  it('nose and lips forward, cheeks 45 degrees, jaws sideways, rear jaws 35 degrees backwards', () => {
    const facing = (id: SubjectAreaId) => areaOf(id).facing.map((c) => Math.round(c * 1e6) / 1e6 + 0)
    const half = Math.round(Math.SQRT1_2 * 1e6) / 1e6
    expect(facing('nose')).toEqual([0, -1, 0])
    expect(facing('lips')).toEqual([0, -1, 0])
    expect(facing('cheek-left')).toEqual([-half, -half, 0])
    expect(facing('cheek-right')).toEqual([half, -half, 0])
    expect(facing('jaw-left')).toEqual([-1, 0, 0])
    expect(areaOf('rear-jaw-right').facing[0]).toBeCloseTo(Math.cos((35 * Math.PI) / 180), 9)
    expect(areaOf('rear-jaw-right').facing[1]).toBeCloseTo(Math.sin((35 * Math.PI) / 180), 9)
  })

  it.each([{}, { turnDegrees: 35, headTurnDegrees: -60, headTiltDegrees: 20 }, { posture: 'sitting' as const }, { heightMetres: 0.9 }])(
    'stand outside the body, close to it: %o', (changes) => {
      const { parts, areas } = subjectForm({ ...standing, ...changes })
      for (const area of areas) {
        const nearest = Math.min(...parts.map((part) => {
          const from = subtract(area.place, part.centre)
          return Math.hypot(...part.axes.map((axis, i) => dot(from, axis) / part.semiAxesMetres[i as 0 | 1 | 2]))
        }))
        expect(nearest, area.id).toBeGreaterThan(1)
        // A nose stands out of the rounded form.
        expect(nearest, area.id).toBeLessThan(area.id === 'nose' ? 1.45 : 1.3)
      }
    })

  it('left is the camera\'s left, also from behind', () => {
    for (const turnDegrees of [0, 40, -40, 180, 200]) {
      for (const name of ['cheek', 'jaw', 'rear-jaw', 'shoulder'] as const) {
        expect(areaOf(`${name}-left`, { turnDegrees }).place[0]).toBeLessThan(areaOf(`${name}-right`, { turnDegrees }).place[0])
      }
    }
  })

  it('turns to camera right and lifts the chin', () => {
    expect(areaOf('nose', { turnDegrees: 90 }).facing[0]).toBeCloseTo(1, 9)
    expect(areaOf('nose', { turnDegrees: 90 }).place[0]).toBeGreaterThan(0.08)
    expect(areaOf('nose', { headTurnDegrees: -90 }).facing[0]).toBeCloseTo(-1, 9)
    expect(areaOf('breastbone', { headTurnDegrees: -90 }).facing[0]).toBeCloseTo(0, 9)
    expect(areaOf('nose', { headTiltDegrees: 30 }).facing[2]).toBeCloseTo(0.5, 9)
    expect(areaOf('nose', { headTiltDegrees: 30 }).place[2]).toBeGreaterThan(areaOf('nose').place[2])
  })

  it('stands where the subject stands', () => {
    const moved = areaOf('nose', { xMetres: 0.4, yMetres: -0.3 }).place
    const still = areaOf('nose').place
    expect(moved[0] - still[0]).toBeCloseTo(0.4, 12)
    expect(moved[1] - still[1]).toBeCloseTo(-0.3, 12)
  })
})
