import { describe, expect, it } from 'vitest'
import { namedAreas } from '../../shared-core/plan/schema/look.ts'
import { findAreas } from '../../shared-core/subject/areas/findAreas.ts'
import { subjectAreas } from '../../shared-core/subject/areas/subjectAreas.ts'
import { surfaceDistanceAt } from '../../shared-core/subject/field/subjectField.ts'
import { NECK_PIVOT, headWeightAt, turnWithHead } from '../../shared-core/subject/mesh/pose.ts'

const degrees = (radians: number): number => (radians * 180) / Math.PI
const areaOf = (id: string) => subjectAreas.find((area) => area.id === id)!

describe('the named areas of the subject', () => {
  it('are those of the plan that are not background, each on the surface', () => {
    expect(subjectAreas.map((area) => area.id).sort()).toEqual(namedAreas.filter((id) => !id.startsWith('background')).sort())
    for (const area of subjectAreas) expect(Math.abs(surfaceDistanceAt(...area.place))).toBeLessThan(0.0001)
  })
  it('are where the field has them now', () => {
    expect(subjectAreas).toEqual(findAreas())
  })
  it('face as a photographer means them: cheeks 45 degrees, jaws sideways, rear jaws 35 degrees backwards', () => {
    const turned = (id: string): number => degrees(Math.atan2(areaOf(id).facing[0], -areaOf(id).facing[1]))
    expect(Math.abs(turned('cheek-right') - 45)).toBeLessThan(6)
    expect(Math.abs(turned('jaw-right') - 90)).toBeLessThan(12)
    expect(turned('rear-jaw-right')).toBeGreaterThan(102)
    for (const name of ['cheek', 'jaw', 'rear-jaw', 'shoulder']) {
      expect(areaOf(`${name}-left`).place[0]).toBeLessThan(0)
      expect(areaOf(`${name}-right`).place[0]).toBeGreaterThan(0)
    }
    expect(areaOf('nose').facing[1]).toBeLessThan(-0.9)
  })
})

describe('turning the head', () => {
  it('takes the whole head and none of the shoulders', () => {
    for (const area of subjectAreas) {
      if (area.id === 'neck') continue
      expect(headWeightAt(area.place[1], area.place[2])).toBe(area.onHead ? 1 : 0)
    }
  })
  it('brings the nose over the camera-right shoulder at 90 degrees and keeps its distance from the pivot', () => {
    const nose = Float64Array.from(areaOf('nose').place)
    turnWithHead(nose, 0, 1, { turnRadians: Math.PI / 2, tiltRadians: 0 }, NECK_PIVOT)
    expect(nose[0]!).toBeGreaterThan(0.1)
    const chinUp = Float64Array.from(areaOf('nose').place)
    turnWithHead(chinUp, 0, 1, { turnRadians: 0, tiltRadians: Math.PI / 6 }, NECK_PIVOT)
    expect(chinUp[2]!).toBeGreaterThan(areaOf('nose').place[2] + 0.02)
    const from = (p: ArrayLike<number>): number => Math.sqrt([0, 1, 2].reduce((sum, i) => sum + (p[i]! - NECK_PIVOT[i]!) * (p[i]! - NECK_PIVOT[i]!), 0))
    expect(from(chinUp)).toBeCloseTo(from(areaOf('nose').place), 12)
  })
})
