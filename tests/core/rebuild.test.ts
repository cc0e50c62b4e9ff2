import { describe, expect, it } from 'vitest'
import { demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Room } from '../../shared-core/plan/schema/room.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { HELD_WITHIN_STOPS, rebuild, type Rebuilt } from '../../shared-core/notebook/rebuild.ts'

const predict = createPredictor()
const inRoom = (room: Partial<Room>): Rebuilt => rebuild(plan, 'dusk', { room: { ...plan.room, ...room } }, createPredictor())

/** What the prediction itself says of both looks, apart from what the rebuilding says of itself. */
function worstOff({ plan: now, prediction }: Rebuilt): number {
  const [before, after] = [predict(plan, 'dusk'), createPredictor()(now, 'dusk')]
  expect(after.areas.map(({ meter }) => meter.stops)).toEqual(prediction.areas.map(({ meter }) => meter.stops))
  return Math.max(...before.areas.filter(({ inFrame }) => inFrame).map(({ id, meter }) =>
    Math.abs((after.areas.find((area) => area.id === id)!.meter.stops ?? -16) - (meter.stops ?? -16))))
}

/** No corner of anything past a wall: the prediction's own check. */
const misfits = ({ prediction }: Rebuilt) => prediction.snags.filter(({ rule }) => rule === 'outside-room')

describe('a look rebuilt', () => {
  it('where it stood already is left alone', () => {
    const again = inRoom({})
    expect(again.moves).toEqual([])
    expect(again.isHeld).toBe(true)
    expect(worstOff(again)).toBeLessThan(0.01)
    expect(again.plan.looks['dusk']).toEqual(plan.looks['dusk'])
  })

  it('in a room 1.5 m shorter is held to 0.2 stop in every area', () => {
    const shorter = inRoom({ lengthMetres: plan.room.lengthMetres - 1.5 })
    expect(misfits(shorter)).toEqual([])
    expect(worstOff(shorter)).toBeLessThanOrEqual(HELD_WITHIN_STOPS)
    expect(shorter.isHeld).toBe(true)
    expect(shorter.reasons).toEqual([])
  })

  it('in a room that is really too short says what came nearer, and why each area is off', () => {
    const tight = inRoom({ lengthMetres: 4.2 })
    expect(misfits(tight)).toEqual([])
    expect(tight.moves.some((words) => words.startsWith('The camera') || words.startsWith('The background'))).toBe(true)
    // The frame at the subject is kept: focal length over distance, as similar triangles have it.
    const [was, now] = [plan.looks['dusk']!, tight.plan.looks['dusk']!]
    const frame = ({ camera, subject }: typeof was) => camera.focalLengthMillimetres / (subject.yMetres - camera.place.yMetres)
    expect(frame(now)).toBeCloseTo(frame(was), 6)
    const off = worstOff(tight)
    expect(tight.isHeld).toBe(off <= HELD_WITHIN_STOPS)
    if (!tight.isHeld) expect(tight.reasons.length).toBeGreaterThan(0)
  })

  it('between closer walls brings lights in along their beams, and keeps their levels', () => {
    const narrow = inRoom({ widthMetres: 4.4, markFromLeftWallMetres: 2.2 })
    expect(misfits(narrow)).toEqual([])
    const [was, now] = [plan.looks['dusk']!.lights['c']!, narrow.plan.looks['dusk']!.lights['c']!]
    const beam = ({ place, aim }: typeof was) => {
      const d = [place.xMetres - aim.xMetres, place.yMetres - aim.yMetres, place.zMetres - aim.zMetres] as const
      const size = Math.hypot(...d)
      return { size, way: d.map((each) => each / size) }
    }
    expect(beam(now).size).toBeLessThan(beam(was).size)
    beam(now).way.forEach((each, k) => expect(each).toBeCloseTo(beam(was).way[k]!, 2))
    for (const light of narrow.prediction.lights.filter(({ on }) => on)) {
      const before = predict(plan, 'dusk').lights.find(({ id }) => id === light.id)!
      expect(Math.abs(light.level.stops! - before.level.stops!)).toBeLessThanOrEqual(0.35)
    }
  })

  it('under a ceiling too low stands under it', () => {
    expect(misfits(inRoom({ heightMetres: 2.4 }))).toEqual([])
  })

  it('with weaker heads says that power is short, and by how much', () => {
    const weak = Object.fromEntries(Object.entries(plan.heads).map(([id, head]) => [id, { ...head, name: `${head.name} small`, fullEnergyJoules: 120, lowestEnergyJoules: 1 }]))
    const rebuilt = rebuild(plan, 'dusk', { kit: { heads: weak, modifiers: plan.modifiers, gels: plan.gels } }, createPredictor())
    expect(rebuilt.isHeld).toBe(false)
    expect(rebuilt.reasons.some((words) => /out of power/.test(words))).toBe(true)
  })

  it('without its gels and with another box lists what is to be bought, and takes the box nearest in size', () => {
    const octa = Object.entries(plan.modifiers).find(([, { kind }]) => kind === 'octa')!
    const other = { ...octa[1], name: 'Octa 120', widthMetres: 1.2, heightMetres: 1.2, count: 1 }
    const modifiers = { ...plan.modifiers, [octa[0]]: { ...other, name: 'Octa 60', widthMetres: 0.6, heightMetres: 0.6 }, big: other }
    const rebuilt = rebuild(plan, 'dusk', { kit: { heads: plan.heads, modifiers, gels: {} } }, createPredictor())
    expect(rebuilt.plan.modifiers[rebuilt.plan.looks['dusk']!.lights['a']!.modifierId]!.name).toBe('Octa 120')
    expect(rebuilt.reasons.filter((words) => words.endsWith('is to be bought')).length).toBeGreaterThanOrEqual(3)
    for (const id of rebuilt.plan.looks['dusk']!.lights['b']!.gelIds) expect(rebuilt.plan.gels[id]).toMatchObject({ sheets: 0 })
  })

  it('on another person keeps what falls on the places, whatever the skin makes of it', () => {
    const deep = rebuild(plan, 'dusk', { subject: { skinItaDegrees: -50, skinSheen: 0.8 } }, createPredictor())
    expect(deep.isHeld).toBe(true)
    expect(deep.plan.looks['dusk']!.subject.skinItaDegrees).toBe(-50)
  })
})
