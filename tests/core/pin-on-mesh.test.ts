import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { poseSubject, type PosedSubject } from '../../shared-core/picture/posedSubject.ts'
import { restPlaceInSet } from '../../shared-core/picture/restPlace.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Camera, Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { SubjectSight } from '../../shared-core/predict/subjectSight.ts'
import { cameraView, framePositionOf } from '../../shared-core/set/camera.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { randomOf } from './random.ts'

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
const lookId = 'dusk'
const look = demoPlan.looks[lookId]!
/** A print's longer side on a large screen. */
const PRINT_PIXELS = 900

type Pixels = readonly [x: number, y: number, depth: number]

/** A pinhole camera by similar triangles, from its place, aim and sensor alone. */
function onPrint(camera: Camera, [px, py, pz]: readonly [number, number, number]): Pixels {
  const { place, aim, focalLengthMillimetres, sensorWidthMillimetres, sensorHeightMillimetres } = camera
  const [ax, ay, az] = [aim.xMetres - place.xMetres, aim.yMetres - place.yMetres, aim.zMetres - place.zMetres]
  const turn = Math.atan2(ax, ay)
  const tilt = Math.atan2(az, Math.hypot(ax, ay))
  const [dx, dy, dz] = [px - place.xMetres, py - place.yMetres, pz - place.zMetres]
  const [right, level] = [dx * Math.cos(turn) - dy * Math.sin(turn), dx * Math.sin(turn) + dy * Math.cos(turn)]
  const [depth, up] = [level * Math.cos(tilt) + dz * Math.sin(tilt), dz * Math.cos(tilt) - level * Math.sin(tilt)]
  const perMillimetre = PRINT_PIXELS / Math.max(sensorWidthMillimetres, sensorHeightMillimetres)
  return [
    (sensorWidthMillimetres / 2 + (focalLengthMillimetres * right) / depth) * perMillimetre,
    (sensorHeightMillimetres / 2 - (focalLengthMillimetres * up) / depth) * perMillimetre, depth,
  ]
}

/** Middle of a facet of the surface as it is posed for the picture. */
function facetMiddle({ positions }: PosedSubject, facet: number): [number, number, number] {
  const along = (axis: number): number => [0, 1, 2].reduce((sum, corner) => sum + positions[3 * asset.triangles[3 * facet + corner]! + axis]! / 3, 0)
  return [along(0), along(1), along(2)]
}

it('a note pressed onto a facet stays within 3 px of it on the print, however camera, pose and aspect change', () => {
  const random = randomOf(5)
  const between = (least: number, most: number): number => least + random() * (most - least)
  const sight = new SubjectSight(asset)
  const posed = poseSubject(asset, look.subject)
  const [width, height] = printSize(look.camera)
  const pressed = Array.from({ length: 4000 }, () => Math.floor(random() * (asset.triangles.length / 3))).flatMap((facet) => {
    const middle = facetMiddle(posed, facet)
    const [x, y] = onPrint(look.camera, middle)
    const place = x < 0 || y < 0 || x > width || y > height ? null : sight.placeUnder(demoPlan, lookId, x / width, y / height)
    // What is pressed there may be another facet in front of it: of those in sight, most are pressed to 0.01 mm.
    const isOwn = place !== null && Math.hypot(...restPlaceInSet(look.subject, place).map((value, axis) => value - middle[axis]!)) < 0.001
    return isOwn ? [{ facet, place }] : []
  })
  expect(pressed.length).toBeGreaterThan(300)
  for (let n = 0; n < 12; n++) {
    const { place, aim } = look.camera
    const across = n % 2 === 1
    const camera: Camera = {
      ...look.camera, place: { xMetres: place.xMetres + between(-0.6, 0.6), yMetres: place.yMetres + between(-0.5, 0.5), zMetres: place.zMetres + between(-0.4, 0.4) },
      aim: { ...aim, zMetres: aim.zMetres + between(-0.1, 0.1) }, focalLengthMillimetres: between(50, 110), ...(across ? { sensorWidthMillimetres: 36, sensorHeightMillimetres: 24 } : {}),
    }
    const subject: Look['subject'] = {
      ...look.subject, turnDegrees: between(-25, 25), headTurnDegrees: between(-35, 35), headTiltDegrees: between(-15, 15),
      xMetres: between(-0.2, 0.2), heightMetres: between(1.5, 1.95), posture: n % 3 === 2 ? 'sitting' : 'standing',
    }
    const posedNow = poseSubject(asset, subject)
    const [printWidth, printHeight] = printSize(camera)
    for (const { facet, place: pinned } of pressed) {
      const [x, y, depth] = onPrint(camera, facetMiddle(posedNow, facet))
      const { frameX, frameY, depthMetres } = framePositionOf(cameraView(camera), restPlaceInSet(subject, pinned))
      expect(Math.hypot(frameX * printWidth - x, frameY * printHeight - y), `facet ${facet}`).toBeLessThan(3)
      expect(depthMetres).toBeCloseTo(depth, 1)
    }
  }
})

it('a note is said to be hidden where its facet is not what the print shows there', () => {
  const sight = new SubjectSight(asset)
  const [width, height] = printSize(look.camera)
  const turned: Plan = { ...demoPlan, looks: { ...demoPlan.looks, [lookId]: { ...look, subject: { ...look.subject, headTurnDegrees: 40 } } } }
  const random = randomOf(6)
  let [agreed, told] = [0, 0]
  for (let n = 0; n < 400; n++) {
    const place = sight.placeUnder(demoPlan, lookId, random(), random())
    if (place === null) continue
    const at = restPlaceInSet(turned.looks[lookId]!.subject, place)
    const [x, y] = onPrint(look.camera, [at[0], at[1], at[2]])
    const shown = sight.placeUnder(turned, lookId, x / width, y / height)
    const isShown = shown !== null && Math.hypot(...shown.map((value, axis) => value - place[axis]!)) < 0.01
    told++
    if (isShown === sight.isSeen(turned, lookId, place)) agreed++
  }
  expect(told).toBeGreaterThan(80)
  // At an outline a place is both: it lies within a cell of what hides it.
  expect(agreed / told).toBeGreaterThan(0.95)
})

function printSize({ sensorWidthMillimetres, sensorHeightMillimetres }: Camera): [width: number, height: number] {
  const perMillimetre = PRINT_PIXELS / Math.max(sensorWidthMillimetres, sensorHeightMillimetres)
  return [sensorWidthMillimetres * perMillimetre, sensorHeightMillimetres * perMillimetre]
}
