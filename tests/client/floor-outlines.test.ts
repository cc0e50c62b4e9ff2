import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coneCorners } from '../../client/floor/solids/cameraSolids.ts'
import { convexHull, leadingEdge } from '../../client/floor/solids/hull.ts'
import { frontOutline, lightSolids, pivotOf } from '../../client/floor/solids/lightSolids.ts'
import { aimedOrientation, elevationDegrees, facingDegreesOf } from '../../client/floor/solids/orientation.ts'
import { silhouette } from '../../client/floor/solids/solid.ts'
import { subjectSolids } from '../../client/floor/solids/subjectSolids.ts'
import { LEG_RADIUS_METRES, supportSolids } from '../../client/floor/solids/supportSolids.ts'
import { thingsOf } from '../../client/floor/things.ts'
import { boundsOf } from '../../client/floor/view/bounds.ts'
import type { DrawnPoint } from '../../client/floor/view/projection.ts'
import { dot, type Vector } from '../../shared-core/arithmetic/vector.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Modifier } from '../../shared-core/plan/schema/kit.ts'
import type { Light, Piece } from '../../shared-core/plan/schema/look.ts'

// Sizes here are set in the test and found again by elementary trigonometry; body measures are from ANSUR II.

const look = demoPlan.looks[demoLookId]!
const anyLight = Object.values(look.lights)[0]!
const at = (xMetres: number, yMetres: number, zMetres: number) => ({ xMetres, yMetres, zMetres })
const level: Light = { ...anyLight, place: at(0, 1, 1.5), aim: at(0, 3, 1.5), rollDegrees: 0, support: 'stand' }
const box: Modifier = { name: 'box', kind: 'softbox', count: 1, widthMetres: 0.9, heightMetres: 1.2, depthMetres: 0.5, diffusers: 2, learnedStops: 0 }

const widthOf = (points: readonly DrawnPoint[]) => boundsOf(points).right - boundsOf(points).left
const heightOf = (points: readonly DrawnPoint[]) => boundsOf(points).bottom - boundsOf(points).top
const frontOf = (light: Light, modifier: Modifier) => ({ part: 'front' as const, points: frontOutline(light, modifier) })
const partOf = (light: Light, modifier: Modifier, part: string) => lightSolids(light, modifier).find((solid) => solid.part === part)!

describe('convex outlines', () => {
  const point = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }))

  it('hold every point and are made of given points only', () => {
    fc.assert(fc.property(fc.array(point, { minLength: 3, maxLength: 40 }), (points) => {
      const hull = convexHull(points)
      const given = new Set(points.map(String))
      expect(hull.every((corner) => given.has(String(corner)))).toBe(true)
      if (hull.length < 3) return
      for (const [x, y] of points) {
        for (let i = 0; i < hull.length; i++) {
          const [ax, ay] = hull[i]!
          const [bx, by] = hull[(i + 1) % hull.length]!
          expect((bx - ax) * (y - ay) - (by - ay) * (x - ax)).toBeGreaterThanOrEqual(-1e-9)
        }
      }
    }))
  })

  it('lead with the side that looks forward', () => {
    const square = convexHull([[0, 0], [1, 0], [1, 1], [0, 1]])
    expect([...leadingEdge(square, [1, 0])].sort()).toEqual([[1, 0], [1, 1]])
    expect([...leadingEdge(square, [0, -1])].sort()).toEqual([[0, 0], [1, 0]])
  })
})

describe('fronts in true size', () => {
  it('show the width from above and the height from the side', () => {
    expect(widthOf(silhouette(frontOf(level, box), 'floor'))).toBeCloseTo(0.9, 6)
    expect(heightOf(silhouette(frontOf(level, box), 'side'))).toBeCloseTo(1.2, 6)
  })

  it('change places when the box is rolled a quarter turn', () => {
    const rolled = { ...level, rollDegrees: 90 }
    expect(widthOf(silhouette(frontOf(rolled, box), 'floor'))).toBeCloseTo(1.2, 6)
    expect(heightOf(silhouette(frontOf(rolled, box), 'side'))).toBeCloseTo(0.9, 6)
  })

  it('are as deep on the floor as height times the sine of the tilt', () => {
    // Aimed 1 m down over 2 m along: tan 0.5.
    const tilted = { ...level, aim: at(0, 3, 0.5) }
    expect(heightOf(silhouette(frontOf(tilted, box), 'floor'))).toBeCloseTo(1.2 * Math.sin(Math.atan(0.5)), 6)
  })

  it('take an octa\'s size across its flats', () => {
    const octa: Modifier = { ...box, kind: 'octa', widthMetres: 1, heightMetres: 1 }
    expect(widthOf(silhouette(frontOf(level, octa), 'floor'))).toBeCloseTo(1, 6)
  })

  it('stand with the body behind them, as deep as the modifier', () => {
    const body = boundsOf(silhouette(partOf(level, box, 'body'), 'floor'))
    // Looks towards the backdrop: up in the drawing. The front is at y = 1.
    expect(body.top).toBeCloseTo(-1, 6)
    expect(body.bottom).toBeCloseTo(-1 + 0.5, 6)
  })

  it('have the head behind a box and in the mouth of an umbrella', () => {
    const umbrella: Modifier = { ...box, kind: 'umbrella-white', widthMetres: 1.65, heightMetres: 1.65, depthMetres: 0.6 }
    const boxHead = boundsOf(silhouette(partOf(level, box, 'head'), 'floor'))
    const umbrellaHead = boundsOf(silhouette(partOf(level, umbrella, 'head'), 'floor'))
    expect(boxHead.top).toBeGreaterThanOrEqual(-1 + 0.5 - 1e-9)
    expect(umbrellaHead.top).toBeLessThan(-1)
    expect(umbrellaHead.bottom).toBeGreaterThan(-1)
  })
})

describe('stands', () => {
  it('stand on the floor under the head with three feet a third of a turn apart', () => {
    const solids = supportSolids(level, box)
    const [x, y] = pivotOf(level, box)
    const feet = solids.filter((solid) => solid.part === 'leg').map((solid) => solid.points.find((point) => point[2] === 0)!)
    expect(feet).toHaveLength(3)
    for (const foot of feet) expect(Math.hypot(foot[0] - x, foot[1] - y)).toBeCloseTo(LEG_RADIUS_METRES.stand, 9)
    const middle = feet.reduce<Vector>((sum, foot) => [sum[0] + foot[0] / 3, sum[1] + foot[1] / 3, 0], [0, 0, 0])
    expect(middle[0]).toBeCloseTo(x, 9)
    expect(middle[1]).toBeCloseTo(y, 9)
  })

  it('put one leg under the load, as a stand is set', () => {
    // Common practice: the tall leg under the load; the box hangs ahead of the column.
    const feet = supportSolids(level, box).filter((solid) => solid.part === 'leg').map((solid) => solid.points.find((point) => point[2] === 0)!)
    const [x, y] = pivotOf(level, box)
    expect(feet.some((foot) => Math.abs(foot[0] - x) < 1e-9 && foot[1] > y)).toBe(true)
  })

  it('give a boom an arm, and a column away from what it lights', () => {
    const boom = supportSolids({ ...level, support: 'boom' }, box)
    expect(boom.some((solid) => solid.part === 'arm')).toBe(true)
    const column = boom.find((solid) => solid.part === 'column')!
    expect(Math.max(...column.points.map((point) => point[1]))).toBeLessThan(level.place.yMetres - 1)
  })
})

describe('directions', () => {
  it('count 0 to the camera and 90 to camera right', () => {
    expect(facingDegreesOf([0, -1, 0])).toBeCloseTo(0, 9)
    expect(facingDegreesOf([1, 0, 0])).toBeCloseTo(90, 9)
    expect(elevationDegrees([0, 1, 1])).toBeCloseTo(45, 9)
  })

  it('are three right angles', () => {
    fc.assert(fc.property(fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }), fc.integer({ min: 0, max: 30 })), fc.integer({ min: -180, max: 180 }), ([x, y, z], roll) => {
      const { axis, right, up } = aimedOrientation(at(0.03, 0.07, 1.11), at(x / 10, y / 10, z / 10), roll)
      for (const [a, b] of [[axis, right], [right, up], [up, axis]] as const) expect(Math.abs(dot(a, b))).toBeLessThan(1e-9)
      for (const a of [axis, right, up]) expect(dot(a, a)).toBeCloseTo(1, 9)
    }))
  })
})

describe('pieces', () => {
  const flat: Piece = {
    kind: 'v-flat', label: 'V', place: at(0, 0, 1.2), facingDegrees: 0, tiltDegrees: 0, widthMetres: 1.2, heightMetres: 2.4,
    openDegrees: 90, front: '#f2f2f2', back: '#161616', transmittance: 0,
  }
  const thingOf = (piece: Piece) =>
    thingsOf(demoPlan, { ...look, pieces: { p: piece } }).find((thing) => thing.key.kind === 'piece')!

  it('draw a V-flat as two panels from one hinge, opening to the camera when it faces the camera', () => {
    const { solids } = thingOf(flat)
    expect(solids).toHaveLength(2)
    const drawn = solids.flatMap((solid) => silhouette(solid, 'floor'))
    const bounds = boundsOf(drawn)
    // Two legs of a right angle, 1.2 m each: 1.2 * sqrt 2 across, 1.2 / sqrt 2 deep, towards the bottom.
    expect(bounds.right - bounds.left).toBeCloseTo(1.2 * Math.SQRT2, 6)
    expect(bounds.bottom).toBeCloseTo(1.2 / Math.SQRT2, 6)
    expect(bounds.top).toBeCloseTo(0, 6)
  })

  it('draw an upright flag as a line as long as it is wide', () => {
    const flag: Piece = { ...flat, kind: 'flag', facingDegrees: 30, widthMetres: 0.45, heightMetres: 0.6 }
    const drawn = boundsOf(silhouette(thingOf(flag).solids[0]!, 'floor'))
    expect(Math.hypot(drawn.right - drawn.left, drawn.bottom - drawn.top)).toBeCloseTo(0.45, 6)
  })
})

describe('subject and camera', () => {
  it('make a person of 1.74 m as wide at the shoulders as people are', () => {
    // ANSUR II (Gordon et al., NATICK/TR-15/007, 2014): bideltoid breadth p5 of women 406 mm to p95 of men 567 mm.
    const across = subjectSolids({ ...look.subject, heightMetres: 1.74, turnDegrees: 0 })
      .filter((solid) => solid.part === 'cloth')
      .map((solid) => boundsOf(silhouette(solid, 'floor')))
    const width = Math.max(...across.map((b) => b.right)) - Math.min(...across.map((b) => b.left))
    expect(width).toBeGreaterThan(0.406)
    expect(width).toBeLessThan(0.567)
  })

  it('show the nose to the camera, and to camera right after a quarter turn', () => {
    const nose = (turnDegrees: number) => {
      const flesh = subjectSolids({ ...look.subject, turnDegrees, headTurnDegrees: 0 }).filter((solid) => solid.part === 'flesh')
      return boundsOf(flesh.flatMap((solid) => silhouette(solid, 'floor')))
    }
    const centre: DrawnPoint = [look.subject.xMetres, -look.subject.yMetres]
    expect(nose(0).bottom - centre[1]).toBeGreaterThan(centre[1] - nose(0).top)
    expect(nose(90).right - centre[0]).toBeGreaterThan(centre[0] - nose(90).left)
  })

  it('open the cone to the width of the Frame at the distance of focus', () => {
    // Field at the subject without focus extension: sensor x distance / focal length; 85 mm on 36 x 24 at 2.5 m: 1058.8 mm.
    const camera = { ...look.camera, place: at(0, -2.5, 1.5), aim: at(0, 0, 1.5), focalLengthMillimetres: 85, sensorWidthMillimetres: 36, sensorHeightMillimetres: 24 }
    const corners = coneCorners(camera, 0)
    expect(corners[1]![0] - corners[0]![0]).toBeCloseTo(1.0588, 4)
    for (const corner of corners) expect(corner[1]).toBeCloseTo(0, 9)
  })
})
