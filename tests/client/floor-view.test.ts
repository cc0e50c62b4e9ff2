import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { facesViewer, moveInSet, placeInSet, project, viewKinds, type DrawnPoint } from '../../client/floor/view/projection.ts'
import { setBounds } from '../../client/floor/view/setBounds.ts'
import { centredOn, fitTo, metresAt, pinch, pixelAt, zoomAbout, ZOOM_LIMITS } from '../../client/floor/view/viewTransform.ts'
import { thingsIn, thingsOf } from '../../client/floor/things.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { cameraView, framePositionOf } from '../../shared-core/set/camera.ts'
import type { Vector } from '../../shared-core/arithmetic/vector.ts'

// What is checked here follows from the words of the design ("left on the Floor is left in the Frame") and from geometry
// alone: no figure comes from a run of ours.

const metre = fc.double({ min: -8, max: 8, noNaN: true })
const place = fc.tuple(metre, metre, metre)
const pixel = fc.tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 700 }))
const transform = fc.record({
  pixelsPerMetre: fc.double({ min: ZOOM_LIMITS.leastPixelsPerMetre, max: ZOOM_LIMITS.mostPixelsPerMetre, noNaN: true }),
  offsetX: fc.double({ min: -2000, max: 2000, noNaN: true }),
  offsetY: fc.double({ min: -2000, max: 2000, noNaN: true }),
})
const look = demoPlan.looks[demoLookId]!

function expectNear(actual: DrawnPoint, wanted: DrawnPoint, tolerance = 1e-6) {
  expect(Math.abs(actual[0] - wanted[0])).toBeLessThan(tolerance)
  expect(Math.abs(actual[1] - wanted[1])).toBeLessThan(tolerance)
}

describe('views of the set', () => {
  it('keeps camera left at the left and what is near the camera at the bottom', () => {
    const view = cameraView(look.camera)
    fc.assert(fc.property(fc.double({ min: 0.05, max: 2, noNaN: true }), fc.double({ min: -1, max: 2, noNaN: true }), (aside, y) => {
      const left: Vector = [-aside, y, 1.5]
      const right: Vector = [aside, y, 1.5]
      expect(project('floor', left)[0]).toBeLessThan(project('floor', right)[0])
      expect(framePositionOf(view, left).frameX).toBeLessThan(framePositionOf(view, right).frameX)
    }))
    expect(project('floor', [0, -2, 1])[1]).toBeGreaterThan(project('floor', [0, 2, 1])[1])
  })

  it('shows up as up from the side and from the camera', () => {
    for (const view of ['side', 'camera'] as const) {
      expect(project(view, [0, 0, 2])[1]).toBeLessThan(project(view, [0, 0, 1])[1])
    }
    expect(project('side', [0, -2, 1])[0]).toBeLessThan(project('side', [0, 2, 1])[0])
  })

  it('moves in the set as the hand moves in the drawing, and not along the line of sight', () => {
    fc.assert(fc.property(fc.constantFrom(...viewKinds), place, metre, metre, (view, from, du, dv) => {
      const move = moveInSet(view, du, dv)
      const to: Vector = [from[0] + move[0], from[1] + move[1], from[2] + move[2]]
      const [u, v] = project(view, from)
      expectNear(project(view, to), [u + du, v + dv])
      const moved = move.filter((part) => part !== 0).length
      expect(moved).toBeLessThanOrEqual(2)
    }))
  })

  it('finds the point of the set under a point of the drawing, at the depth asked for', () => {
    fc.assert(fc.property(fc.constantFrom(...viewKinds), place, fc.tuple(metre, metre), (view, reference, drawn) => {
      const found = placeInSet(view, drawn, reference)
      expectNear(project(view, found), drawn)
      const kept = found.filter((part, axis) => part === reference[axis]).length
      expect(kept).toBeGreaterThanOrEqual(1)
    }))
  })

  it('knows whose front the viewer sees', () => {
    expect(facesViewer('floor', [0, 0, 1])).toBe(true)
    expect(facesViewer('side', [1, 0, 0])).toBe(true)
    expect(facesViewer('camera', [0, -1, 0])).toBe(true)
    expect(facesViewer('camera', [0, 1, 0])).toBe(false)
  })

  it('leaves the camera out of what the camera sees, and draws the far before the near', () => {
    const seen = thingsIn(thingsOf(demoPlan, look), 'camera')
    expect(seen.some((thing) => thing.key.kind === 'camera')).toBe(false)
    expect(seen[0]?.key.kind).toBe('backdrop')
    const depths = seen.slice(1).map((thing) => thing.place[1])
    expect([...depths].sort((a, b) => b - a)).toEqual(depths)
  })
})

describe('zoom and fit', () => {
  it('goes from metres to pixels and back', () => {
    fc.assert(fc.property(transform, fc.tuple(metre, metre), (view, drawn) => {
      expectNear(metresAt(view, pixelAt(view, drawn)), drawn)
    }))
  })

  it('zooms about the pixel that is held', () => {
    fc.assert(fc.property(transform, pixel, fc.double({ min: 0.2, max: 5, noNaN: true }), (view, held, factor) => {
      const before = metresAt(view, held)
      expectNear(metresAt(zoomAbout(view, held, factor), held), before)
    }))
  })

  it('stops at its limits however far it is turned', () => {
    fc.assert(fc.property(transform, pixel, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (view, held, factor) => {
      const { pixelsPerMetre } = zoomAbout(view, held, factor)
      expect(pixelsPerMetre).toBeGreaterThanOrEqual(ZOOM_LIMITS.leastPixelsPerMetre)
      expect(pixelsPerMetre).toBeLessThanOrEqual(ZOOM_LIMITS.mostPixelsPerMetre)
    }))
  })

  it('keeps the drawing under both fingers of a pinch that does not turn', () => {
    const view = { pixelsPerMetre: 100, offsetX: 30, offsetY: 40 }
    const before = [[100, 200], [200, 200]] as const
    const after = [[80, 260], [260, 260]] as const
    const pinched = pinch(view, before, after)
    expectNear(metresAt(pinched, after[0]), metresAt(view, before[0]))
    expectNear(metresAt(pinched, after[1]), metresAt(view, before[1]))
  })

  it('fits a box between the insets, touching at one pair of sides', () => {
    const bounds = { left: -2, top: -3, right: 2, bottom: 2.5 }
    const view = fitTo(bounds, { width: 600, height: 500 }, { left: 20, top: 10, right: 20, bottom: 50 })
    const [left, top] = pixelAt(view, [bounds.left, bounds.top])
    const [right, bottom] = pixelAt(view, [bounds.right, bounds.bottom])
    expect(left).toBeGreaterThanOrEqual(20 - 1e-9)
    expect(right).toBeLessThanOrEqual(580 + 1e-9)
    expect(top).toBeCloseTo(10, 6)
    expect(bottom).toBeCloseTo(450, 6)
  })

  it('brings a point to the middle', () => {
    const view = centredOn({ pixelsPerMetre: 80, offsetX: 5, offsetY: 5 }, [3, -2], { width: 400, height: 300 })
    expectNear(pixelAt(view, [3, -2]), [200, 150])
  })

  it('fits the set to everything that was placed', () => {
    const things = thingsOf(demoPlan, look)
    for (const view of viewKinds) {
      const bounds = setBounds(things, view)
      for (const { place: at } of things) {
        const [u, v] = project(view, at)
        expect(u).toBeGreaterThan(bounds.left)
        expect(u).toBeLessThan(bounds.right)
        expect(v).toBeGreaterThan(bounds.top)
        expect(v).toBeLessThan(bounds.bottom)
      }
    }
  })
})
