import { SEES_PLAINLY } from '../../client/session/board.ts'
import { describe, expect, it } from 'vitest'
import { findThing } from '../../client/floor/gestures/hit.ts'
import { oncePerFrame } from '../../client/floor/gestures/oncePerFrame.ts'
import { placeChoices, startPlacing } from '../../client/floor/gestures/placing.ts'
import { aimAtNose, duplicateThing, noseOf, removeThing, switchThing, toOtherSide } from '../../client/floor/gestures/thingEdits.ts'
import { heldThings, thingAtPath } from '../../client/floor/others/heldThings.ts'
import { keyText, thingsOf, type ThingKey } from '../../client/floor/things.ts'
import { project } from '../../client/floor/view/projection.ts'
import type { Person } from '../../client/session/board.ts'
import { distance } from '../../shared-core/arithmetic/vector.ts'
import { demoLookId as lookId, demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import { planSchema, type Plan } from '../../shared-core/plan/schema/plan.ts'

// A gesture is checked by what must hold of the plan after it: what moved, by how much, and what did not.

const look = plan.looks[lookId]!
const things = thingsOf(plan, look)
const [lightId, light] = Object.entries(look.lights)[0]!
const lightKey: ThingKey = { kind: 'light', id: lightId }
const after = (result: ReturnType<typeof switchThing>, before: Plan = plan): Plan => {
  if (!result.ok) throw new Error(result.message)
  return applyEdit(before, result.edit)
}

describe('things as a whole', () => {
  it('go to the other side and back', () => {
    const across = after(toOtherSide(plan, lookId, lightKey))
    const mirrored = across.looks[lookId]!.lights[lightId]!
    expect(mirrored.place.xMetres).toBeCloseTo(2 * look.subject.xMetres - light.place.xMetres, 9)
    const to = [look.subject.xMetres, look.subject.yMetres, 1.5] as const
    const far = (l: typeof light) => distance([l.place.xMetres, l.place.yMetres, l.place.zMetres], to)
    expect(far(mirrored)).toBeCloseTo(far(light), 9)
    expect(after(toOtherSide(across, lookId, lightKey), across).looks[lookId]!.lights[lightId]).toEqual(light)
  })

  it('are duplicated beside themselves, with a letter of their own', () => {
    const copy = duplicateThing(plan, lookId, lightKey)
    if (!copy.ok || copy.key.kind !== 'light') throw new Error('no copy')
    const lights = applyEdit(plan, copy.edit).looks[lookId]!.lights
    const letters = Object.values(lights).map(({ letter }) => letter)
    expect(new Set(letters).size).toBe(letters.length)
    expect(lights[copy.key.id]!.modifierId).toBe(light.modifierId)
    expect(duplicateThing(plan, lookId, { kind: 'camera' }).ok).toBe(false)
  })

  it('are removed when they were placed, and not when every look has them', () => {
    expect(Object.keys(after(removeThing(plan, lookId, lightKey)).looks[lookId]!.lights)).not.toContain(lightId)
    for (const kind of ['camera', 'subject', 'backdrop'] as const) expect(removeThing(plan, lookId, { kind }).ok).toBe(false)
  })

  it('are aimed at the nose to the centimetre, and switched off and on', () => {
    const aimed = after(aimAtNose(plan, lookId, lightKey)).looks[lookId]!.lights[lightId]!.aim
    expect(distance([aimed.xMetres, aimed.yMetres, aimed.zMetres], noseOf(look))).toBeLessThan(0.01)
    const off = after(switchThing(plan, lookId, lightKey))
    expect(off.looks[lookId]!.lights[lightId]!.on).toBe(!light.on)
    expect(after(switchThing(off, lookId, lightKey), off).looks[lookId]!.lights[lightId]!.on).toBe(light.on)
  })
})

describe('placing', () => {
  it('offers every modifier of the kit by name, and the four pieces and the point', () => {
    const names = placeChoices(plan).map(({ name }) => name)
    for (const { name } of Object.values(plan.modifiers)) expect(names).toContain(name)
    for (const name of ['Flag', 'V-flat', 'Board', 'Scrim', 'Meter point']) expect(names).toContain(name)
  })

  it('sets each down where it is asked to, as one thing wherever the pointer goes, in a plan the schema accepts', () => {
    for (const choice of placeChoices(plan)) {
      const started = startPlacing(plan, lookId, choice)
      if (!started.ok) throw new Error(started.message)
      const { placing } = started
      const first = placing.editAt('floor', [0.1, 0.1])
      const last = placing.editAt('floor', [-1.2, 0.7])
      expect(last.changes.map((change) => change.path)).toEqual(first.changes.map((change) => change.path))
      const placed = applyEdit(plan, last)
      expect(planSchema.safeParse(placed).success).toBe(true)
      const [u, v] = project('floor', findThing(thingsOf(placed, placed.looks[lookId]!), placing.key)!.place)
      expect(u).toBeCloseTo(-1.2, 9)
      expect(v).toBeCloseTo(0.7, 9)
    }
  })

  it('turns what has a front to the subject', () => {
    const board = placeChoices(plan).find((choice) => choice.kind === 'piece' && choice.pieceKind === 'board')!
    const started = startPlacing(plan, lookId, board)
    if (!started.ok || started.placing.key.kind !== 'piece') throw new Error('not placed')
    const placed = applyEdit(plan, started.placing.editAt('floor', [-1.5, -look.subject.yMetres]))
    // From camera left of the subject the front looks to camera right: 90.
    expect(placed.looks[lookId]!.pieces[started.placing.key.id]!.facingDegrees).toBe(90)
  })
})

describe('others', () => {
  const person = (inHand: PlanEdit | null, isSelf = false): Person => ({
    seatId: 's', name: 'Tobin', role: 'assistant', isSelf, hasPen: false, pointer: null, selection: null, inHand, lookId, sees: SEES_PLAINLY,
  })
  const move: PlanEdit = { name: 'moveLight', changes: [{ path: ['looks', lookId, 'lights', lightId, 'place', 'xMetres'], set: 1 }] }

  it('are named at what they hold in this look, and nowhere else', () => {
    expect(heldThings([person(move)], lookId, things).map(({ thing: held }) => keyText(held.key))).toEqual([keyText(lightKey)])
    expect(heldThings([person(move, true), person(null)], lookId, things)).toEqual([])
    expect(heldThings([person(move)], 'another', things)).toEqual([])
    expect(thingAtPath(['looks', lookId, 'camera', 'aim'], lookId)).toEqual({ kind: 'camera' })
    expect(thingAtPath(['heads', 'x'], lookId)).toBeNull()
  })
})

describe('once per frame', () => {
  it('lets only the latest through, and nothing after it was called off', () => {
    const frames: (() => void)[] = []
    const seen: number[] = []
    const show = oncePerFrame<number>((value) => void seen.push(value), (callback) => {
      frames.push(callback)
      return () => void frames.splice(frames.indexOf(callback), 1)
    })
    show.set(1)
    show.set(2)
    show.set(3)
    expect(frames).toHaveLength(1)
    frames.shift()!()
    expect(seen).toEqual([3])
    show.set(4)
    show.cancel()
    expect(frames).toHaveLength(0)
    expect(seen).toEqual([3])
  })
})
