import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { restPlaceInSet } from '../../shared-core/picture/restPlace.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { SubjectSight } from '../../shared-core/predict/subjectSight.ts'
import { cameraView, framePositionOf } from '../../shared-core/set/camera.ts'
import { subjectAreas } from '../../shared-core/subject/areas/subjectAreas.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const lookId = 'dusk'
/** Of the Frame's height on a laptop. */
const HEIGHT_PIXELS = 520
const ON_THE_FACE = ['nose', 'lips', 'cheek-left', 'cheek-right', 'neck', 'breastbone']

function withLook(camera: Partial<Look['camera']>, subject: Partial<Look['subject']>): Plan {
  const look = demoPlan.looks[lookId]!
  return { ...demoPlan, looks: { ...demoPlan.looks, [lookId]: { ...look, camera: { ...look.camera, ...camera }, subject: { ...look.subject, ...subject } } } }
}

const place = demoPlan.looks[lookId]!.camera.place
const sets: readonly (readonly [string, Plan])[] = [
  ['as it stands', demoPlan],
  ['the camera nearer, lower and to the side', withLook({ place: { xMetres: place.xMetres + 0.35, yMetres: place.yMetres + 0.5, zMetres: place.zMetres - 0.2 } }, {})],
  ['the head turned and tilted, on a turned body', withLook({}, { headTurnDegrees: 24, headTiltDegrees: -9, turnDegrees: -11 })],
  ['held across', withLook({ sensorWidthMillimetres: 36, sensorHeightMillimetres: 24 }, { xMetres: 0.2, heightMetres: 1.82 })],
  ['sitting', withLook({ aim: { xMetres: 0, yMetres: 0, zMetres: 1.2 } }, { posture: 'sitting' })],
]

/** The other way there: the areas' own places, posed by the numbers' form and not by the picture's surface. */
function areasOf(plan: Plan) {
  return predict(plan, lookId).areas.filter(({ id, inFrame }) => inFrame && ON_THE_FACE.includes(id))
}

describe('a place of the surface that is pressed in the Frame', () => {
  it.each(sets)('is the area that lies there: %s', (_, plan) => {
    const sight = new SubjectSight(asset)
    const areas = areasOf(plan)
    expect(areas.length).toBeGreaterThanOrEqual(4)
    for (const { id, frameX, frameY } of areas) {
      const found = sight.placeUnder(plan, lookId, frameX, frameY)!
      const [x, y, z] = subjectAreas.find((area) => area.id === id)!.place
      expect(Math.hypot(found[0] - x, found[1] - y, found[2] - z), id).toBeLessThan(0.004)
    }
  })

  it.each(sets)('stays within 3 px of it: pressed as it stands, seen with %s', (_, plan) => {
    const sight = new SubjectSight(asset)
    const pressed = new Map(areasOf(demoPlan).map(({ id, frameX, frameY }) => [id, sight.placeUnder(demoPlan, lookId, frameX, frameY)!]))
    const { camera, subject } = plan.looks[lookId]!
    const view = cameraView(camera)
    const aspect = view.widthPerMetre / view.heightPerMetre
    for (const { id, frameX, frameY } of areasOf(plan)) {
      const now = framePositionOf(view, restPlaceInSet(subject, pressed.get(id)!))
      const away = HEIGHT_PIXELS * Math.hypot((now.frameX - frameX) * aspect, now.frameY - frameY)
      expect(away, id).toBeLessThan(3)
    }
  })

  it('is none where the background shows', () => {
    expect(new SubjectSight(asset).placeUnder(demoPlan, lookId, 0.04, 0.04)).toBeNull()
  })

  it('is hidden once the head has turned it away, and outside the Frame', () => {
    const sight = new SubjectSight(asset)
    const cheek = subjectAreas.find(({ id }) => id === 'cheek-left')!.place
    expect(sight.isSeen(demoPlan, lookId, cheek)).toBe(true)
    // A cheek that faces 45 degrees to one side lies behind the nose once the head has turned as far the other way and more.
    const away = [75, -75].map((headTurnDegrees) => sight.isSeen(withLook({}, { headTurnDegrees, turnDegrees: headTurnDegrees / 2 }), lookId, cheek))
    expect([...away].sort()).toEqual([false, true])
    expect(sight.isSeen(withLook({ aim: { xMetres: 3, yMetres: 0, zMetres: 1.5 } }, {}), lookId, cheek)).toBe(false)
  })

  it('asks for a look that is there', () => {
    expect(() => new SubjectSight(asset).placeUnder(demoPlan, 'nowhere', 0.5, 0.5)).toThrow(RangeError)
  })
})
