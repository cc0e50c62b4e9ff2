import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dragEdit, moveEdit, turnEdit, wrapDegrees, type Drag } from '../../client/floor/gestures/dragEdit.ts'
import { handleAt, handlesOf } from '../../client/floor/gestures/handles.ts'
import { distanceToOutline, findThing, REACH_PIXELS, thingAt } from '../../client/floor/gestures/hit.ts'
import { endsSteps, meaningOf } from '../../client/floor/gestures/keys.ts'
import { keyText, thingsOf, type Thing, type ThingKey } from '../../client/floor/things.ts'
import { project, type DrawnPoint, type ViewKind } from '../../client/floor/view/projection.ts'
import { pixelAt } from '../../client/floor/view/viewTransform.ts'
import { cross, length, subtract } from '../../shared-core/arithmetic/vector.ts'
import { demoLookId as lookId, demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { planSchema, type Plan } from '../../shared-core/plan/schema/plan.ts'

// A gesture is checked by what must hold of the plan after it: what moved, by how much, and what did not.

const look = plan.looks[lookId]!
const things = thingsOf(plan, look)
const [lightId, light] = Object.entries(look.lights)[0]!
const [pieceId] = Object.keys(look.pieces)
const lightKey: ThingKey = { kind: 'light', id: lightId }
const thing = (key: ThingKey): Thing => findThing(things, key)!
const after = (result: ReturnType<typeof dragEdit>, before: Plan = plan): Plan => {
  if (!result.ok) throw new Error(result.message)
  return applyEdit(before, result.edit)
}
const lookAfter = (result: ReturnType<typeof dragEdit>) => after(result).looks[lookId]!
const dragOf = (key: ThingKey, handle: Drag['handle'], view: ViewKind, from: DrawnPoint): Drag => ({ thing: thing(key), handle, view, from })

describe('dragging', () => {
  it('moves the front by what the hand moved, keeps the aim, and touches no other leaf', () => {
    const result = dragEdit(plan, lookId, dragOf(lightKey, 'body', 'floor', [0.3, 0.3]), [1.3, -0.2], false)
    const moved = lookAfter(result).lights[lightId]!
    expect(moved.place.xMetres).toBeCloseTo(light.place.xMetres + 1, 9)
    expect(moved.place.yMetres).toBeCloseTo(light.place.yMetres + 0.5, 9)
    expect(moved.place.zMetres).toBe(light.place.zMetres)
    expect(moved.aim).toEqual(light.aim)
    if (result.ok) expect(result.edit.changes.map((change) => change.path.join('/'))).toEqual([
      `looks/${lookId}/lights/${lightId}/place/xMetres`, `looks/${lookId}/lights/${lightId}/place/yMetres`,
    ])
  })

  it('from the side changes height and depth only', () => {
    const moved = lookAfter(dragEdit(plan, lookId, dragOf(lightKey, 'body', 'side', [0, 0]), [0.2, -0.3], false)).lights[lightId]!
    expect(moved.place.xMetres).toBe(light.place.xMetres)
    expect(moved.place.yMetres).toBeCloseTo(light.place.yMetres + 0.2, 9)
    expect(moved.place.zMetres).toBeCloseTo(light.place.zMetres + 0.3, 9)
  })

  it('with Shift goes only nearer and farther along the light\'s own axis', () => {
    const { axis, place } = thing(lightKey)
    const moved = lookAfter(dragEdit(plan, lookId, dragOf(lightKey, 'body', 'floor', [0, 0]), [0.9, 0.1], true)).lights[lightId]!.place
    const way = subtract([moved.xMetres, moved.yMetres, moved.zMetres], place)
    expect(length(way)).toBeGreaterThan(0.1)
    // To the centimetre that places are written in.
    expect(length(cross(way, axis))).toBeLessThan(0.0125)
  })

  it('of the aim moves the aim alone', () => {
    const moved = lookAfter(dragEdit(plan, lookId, dragOf(lightKey, 'aim', 'floor', [0, 0]), [0.25, 0], false)).lights[lightId]!
    expect(moved.aim.xMetres).toBeCloseTo(light.aim.xMetres + 0.25, 9)
    expect(moved.place).toEqual(light.place)
  })

  it('of the turn handle swings the beam about the front by the angle the hand goes round', () => {
    const [u, v] = project('floor', thing(lightKey).place)
    const moved = lookAfter(dragEdit(plan, lookId, dragOf(lightKey, 'turn', 'floor', [u + 1, v]), [u, v + 1], false)).lights[lightId]!
    expect(moved.place).toEqual(light.place)
    const beam = (one: typeof light) => [one.aim.xMetres - one.place.xMetres, -(one.aim.yMetres - one.place.yMetres)] as const
    const [x, y] = beam(light)
    // A quarter turn clockwise on a screen whose v counts down: (u, v) becomes (-v, u).
    expect(beam(moved)[0]).toBeCloseTo(-y, 6)
    expect(beam(moved)[1]).toBeCloseTo(x, 6)
  })

  it('from the side tips a light up when the hand lifts its beam, whichever way it looks', () => {
    for (const one of things.filter(({ key }) => key.kind === 'light')) {
      const looksRight = project('side', one.axis)[0] > 0
      const tipped = lookAfter(turnEdit(plan, lookId, one, 'side', looksRight ? -10 : 10))
      const { id } = one.key as { id: string }
      const rise = (l: typeof light) => (l.aim.zMetres - l.place.zMetres) / Math.hypot(l.aim.xMetres - l.place.xMetres, l.aim.yMetres - l.place.yMetres)
      expect(Math.atan(rise(tipped.lights[id]!)) - Math.atan(rise(look.lights[id]!))).toBeCloseTo((10 * Math.PI) / 180, 6)
    }
  })

  it('turns pieces and subject clockwise by turning their front the other way round the compass of facing', () => {
    const flag = look.pieces[pieceId!]!
    const turned = lookAfter(turnEdit(plan, lookId, thing({ kind: 'piece', id: pieceId! }), 'floor', 90)).pieces[pieceId!]!
    // Facing the camera is down on the screen; clockwise from down is left, which is -90.
    expect(wrapDegrees(turned.facingDegrees - flag.facingDegrees)).toBe(-90)
    expect(lookAfter(turnEdit(plan, lookId, thing({ kind: 'subject' }), 'floor', 15)).subject.turnDegrees).toBe(look.subject.turnDegrees - 15)
  })

  it('moves the paper to and fro only, and its top only up and down', () => {
    const moved = lookAfter(dragEdit(plan, lookId, dragOf({ kind: 'backdrop' }, 'body', 'floor', [0, 0]), [0.5, -0.3], false)).backdrop
    expect(moved.yMetres).toBeCloseTo(look.backdrop.yMetres + 0.3, 9)
    expect(moved.centreXMetres).toBe(look.backdrop.centreXMetres)
    const raised = lookAfter(dragEdit(plan, lookId, dragOf({ kind: 'backdrop' }, 'top', 'side', [0, 0]), [0.5, 0.2], false)).backdrop
    expect(raised.topMetres).toBeCloseTo(look.backdrop.topMetres - 0.2, 9)
    expect(raised.yMetres).toBe(look.backdrop.yMetres)
  })

  it('moves camera and subject on the floor and writes whole centimetres', () => {
    fc.assert(fc.property(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (du, dv) => {
      for (const key of [{ kind: 'camera' }, { kind: 'subject' }] as const) {
        const result = moveEdit(plan, lookId, thing(key), [du, dv, 0])
        if (!result.ok) throw new Error(result.message)
        for (const change of result.edit.changes) {
          const value = 'set' in change ? Number(change.set) : NaN
          expect(Math.abs(value * 100 - Math.round(value * 100))).toBeLessThan(1e-6)
        }
      }
    }))
  })

  it('always leaves a plan that the schema accepts', () => {
    fc.assert(fc.property(
      fc.constantFrom(...things), fc.constantFrom<ViewKind>('floor', 'side', 'camera'), fc.constantFrom<Drag['handle']>('body', 'aim', 'turn'),
      fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true }), fc.boolean(),
      (one, view, handle, du, dv, alongAxis) => {
        const result = dragEdit(plan, lookId, { thing: one, handle, view, from: [0.2, 0.1] }, [du, dv], alongAxis)
        if (result.ok) expect(planSchema.safeParse(applyEdit(plan, result.edit)).success).toBe(true)
      },
    ), { numRuns: 60 })
  })
})

describe('what is under a finger', () => {
  const view = { pixelsPerMetre: 100, offsetX: 300, offsetY: 300 }

  it('is the thing whose place is pressed', () => {
    for (const key of [lightKey, { kind: 'camera' }, { kind: 'subject' }] as const) {
      const [x, y] = pixelAt(view, project('floor', thing(key).place))
      // Just behind the front, and behind the lens: inside the body.
      const back = project('floor', thing(key).axis)
      expect(keyText(thingAt(things, 'floor', view, [x - back[0] * 6, y - back[1] * 6], REACH_PIXELS.mouse)!)).toBe(keyText(key))
    }
  })

  it('is taken from 22 px away by a finger and not by a mouse', () => {
    const camera = thing({ kind: 'camera' })
    const [x, y] = pixelAt(view, project('floor', camera.place))
    const beside: DrawnPoint = [x + 22, y + 5]
    expect(thingAt([camera], 'floor', view, beside, REACH_PIXELS.touch)?.kind).toBe('camera')
    expect(thingAt([camera], 'floor', view, beside, REACH_PIXELS.mouse)).toBeNull()
  })

  it('is nothing on the bare floor', () => {
    expect(thingAt(things, 'floor', view, [5_000, 5_000], REACH_PIXELS.touch)).toBeNull()
  })

  it('measures distances to outlines as a ruler does', () => {
    const square: DrawnPoint[] = [[0, 0], [10, 0], [10, 10], [0, 10]]
    expect(distanceToOutline([5, 5], square)).toBe(0)
    expect(distanceToOutline([13, 14], square)).toBeCloseTo(5, 9)
    expect(distanceToOutline([5, 4], [[0, 0], [10, 0]])).toBeCloseTo(4, 9)
  })

  it('has handles: aim and turn for a light, turn for a flag, aim for the camera, none to turn a point', () => {
    const kinds = (key: ThingKey) => handlesOf(thing(key), 'floor', view).map(({ kind }) => kind).sort()
    expect(kinds(lightKey)).toEqual(['aim', 'turn'])
    expect(kinds({ kind: 'piece', id: pieceId! })).toEqual(['turn'])
    expect(kinds({ kind: 'camera' })).toEqual(['aim'])
    expect(handlesOf(thing({ kind: 'backdrop' }), 'side', view).map(({ kind }) => kind)).toEqual(['top'])
  })

  it('hangs the turn handle behind a light, off its outline, and finds it', () => {
    const handles = handlesOf(thing(lightKey), 'floor', view)
    const turn = handles.find(({ kind }) => kind === 'turn')!
    const [x, y] = pixelAt(view, project('floor', thing(lightKey).place))
    const [u, v] = project('floor', thing(lightKey).axis)
    expect((turn.at[0] - x) * u + (turn.at[1] - y) * v).toBeLessThan(0)
    expect(handleAt(handles, turn.at, 5)).toBe('turn')
    expect(handleAt(handles, [turn.at[0] + 400, turn.at[1] + 400], 5)).toBeNull()
  })
})

describe('keys', () => {
  const press = (key: string, part: Partial<KeyboardEvent> = {}) => meaningOf({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, ...part })

  it('move by 1 cm, by 10 cm with Shift, and turn with Alt', () => {
    expect(press('ArrowRight')).toEqual({ kind: 'move', du: 0.01, dv: 0 })
    expect(press('ArrowUp', { shiftKey: true })).toEqual({ kind: 'move', du: 0, dv: -0.1 })
    expect(press('ArrowLeft', { altKey: true })).toEqual({ kind: 'turn', degrees: -1 })
    expect(press('ArrowLeft', { altKey: true, shiftKey: true })).toEqual({ kind: 'turn', degrees: -10 })
    expect(endsSteps('ArrowUp')).toBe(true)
    expect(endsSteps('Shift')).toBe(false)
  })

  it('leave the browser and the page their own', () => {
    expect(press('d', { ctrlKey: true })).toBeNull()
    expect(press('z', { metaKey: true })).toBeNull()
    expect(press('Tab')).toBeNull()
    expect(press('D', { shiftKey: true })).toEqual({ kind: 'duplicate' })
    // A bare letter picks a light, here as everywhere on the board.
    expect(press('d')).toBeNull()
    expect(press('Delete')).toEqual({ kind: 'remove' })
  })
})
