import type { Vector } from '../../arithmetic/vector.ts'
import { behindAt } from '../../set/behind.ts'
import { builtSet } from '../../set/builtSet.ts'
import { framePositionOf, isInFrame } from '../../set/camera.ts'
import { lightBody } from '../../set/lightBody.ts'
import { Occluders } from '../../set/occluders.ts'
import { panelCorners, panelsOf } from '../../set/panels.ts'
import { roomBox, type RoomBox } from '../../set/room.ts'
import { lightAtPoint } from '../../transport/lightAtPoint.ts'
import type { Snag } from '../../checks/snag.ts'
import { meterReading, receptorConstant } from '../taking.ts'
import { centimetresText, stopsText, type Check, type CheckView } from './check.ts'

/** R25: keep this under the ceiling. R8: nothing within this share of the frame's edge. Common practice, no source. */
const CEILING_CLEAR_METRES = 0.1
const FRAME_MARGIN = 0.05
/** Stray light on the lens below this, against the aperture, is lost in its ordinary veil (common practice, no source). */
const LENS_STRAY_STOPS = -3.5

/** Everything that stands in the set with its corners, for checks of fit. */
interface Standing {
  readonly id: string
  readonly name: string
  readonly corners: readonly Vector[]
  readonly pole: readonly Vector[]
}

function standing({ look, scene }: CheckView): Standing[] {
  const lights = scene.lights.map((light): Standing => {
    const body = lightBody(light)
    const hangs = look.lights[light.id]?.support === 'boom'
    return { id: light.id, name: look.lights[light.id]?.letter ?? '', corners: body.corners, pole: hangs ? [] : poleOf(body.standTop) }
  })
  const pieces = scene.pieces.map((piece): Standing => ({
    id: piece.id,
    name: `the ${look.pieces[piece.id]?.label || piece.kind}`,
    corners: panelsOf(piece).flatMap(panelCorners),
    pole: [],
  }))
  return [...lights, ...pieces]
}

function poleOf([x, y, top]: Vector): Vector[] {
  return [1, 0.75, 0.5, 0.25, 0].map((share) => [x, y, top * share] as const)
}

/** Walls and ceiling. */
export const outsideRoom: Check = (view) => {
  const box = roomBox(view.scene.room)
  return standing(view).flatMap((thing): Snag[] => {
    const past = farthestPast(thing.corners, box)
    if (past.metres <= 0) return []
    return [{
      key: `outside-room:${thing.id}`,
      rule: 'outside-room',
      severity: 'stop',
      message: `${capital(thing.name)} does not fit: ${centimetresText(past.metres)} into the ${past.what}`,
      action: `Move ${thing.name} ${centimetresText(past.metres + 0.05)} ${past.away}`,
      value: past.metres,
      threshold: 0,
      unit: 'm',
      about: [thing.id],
    }]
  })
}

function farthestPast(corners: readonly Vector[], box: RoomBox): { metres: number; what: string; away: string } {
  let worst = { metres: -Infinity, what: '', away: '' }
  for (const [x, y, z] of corners) {
    const sides = [
      { metres: box.left - x, what: 'camera-left wall', away: 'to camera right' },
      { metres: x - box.right, what: 'camera-right wall', away: 'to camera left' },
      { metres: y - box.rear, what: 'rear wall', away: 'towards the camera' },
      { metres: box.front - y, what: 'front wall', away: 'towards the backdrop' },
      { metres: z - (box.height - CEILING_CLEAR_METRES), what: 'ceiling’s clearance', away: 'down' },
      { metres: -z, what: 'floor', away: 'up' },
    ]
    for (const side of sides) if (side.metres > worst.metres) worst = side
  }
  // A corner that rests on floor or wall is fine.
  return worst.metres > 0.005 ? worst : { ...worst, metres: 0 }
}

/** R8: a light, its stand or a piece in the picture. What is meant to be seen, the background itself, is not told. */
export const inFrame: Check = (checkView) => {
  const { scene } = checkView
  const { view } = builtSet(scene)
  return standing(checkView).flatMap((thing): Snag[] => {
    if (isBackground(checkView, thing.id)) return []
    const seen = [...thing.corners, ...thing.pole].filter((place) => {
      const position = framePositionOf(view, place)
      return isInFrame(position, FRAME_MARGIN) && !isHidden(checkView, place, thing.id)
    })
    if (seen.length === 0) return []
    const onlyStand = seen.every((place) => thing.pole.includes(place))
    return [{
      key: `in-frame:${thing.id}`,
      rule: 'in-frame',
      severity: 'look',
      message: `${capital(onlyStand ? `${thing.name}’s stand` : thing.name)} is in the frame`,
      action: `Move ${thing.name} out to the side, or crop tighter`,
      value: seen.length,
      threshold: 0,
      unit: 'points seen',
      about: [thing.id],
    }]
  })
}

/** A lit front or a scrim that fills the middle of the picture is the background, not a stand in it. */
function isBackground({ scene }: CheckView, id: string): boolean {
  const middle = behindAt(scene, 0.5, 0.5)
  return middle.lightId === id || (middle.surfaceId?.startsWith(`piece:${id}:`) ?? false)
}

/** Behind the subject, the paper or a piece as the camera sees it. */
function isHidden({ scene }: CheckView, place: Vector, ownId: string): boolean {
  const { view, form } = builtSet(scene)
  const position = framePositionOf(view, place)
  const body = new Occluders(form.parts, [], [])
  if (body.shareSeen(view.place, place, 0.001) < 0.5) return true
  const nearest = behindAt(scene, position.frameX, position.frameY)
  const isSelf = nearest.lightId === ownId || (nearest.surfaceId?.startsWith(`piece:${ownId}:`) ?? false)
  const placeDistance = Math.sqrt(place.reduce((sum, value, k) => sum + (value - view.place[k]!) * (value - view.place[k]!), 0))
  return !isSelf && nearest.distanceMetres < placeDistance - 0.02
}

/** R7: light that reaches the lens from outside the picture only hazes it. */
export const lensSeesLight: Check = (checkView) => {
  const { look, scene, measured } = checkView
  const { view } = builtSet(scene)
  const lens = { place: view.place, facing: view.ahead, surfaceId: null }
  return measured.lights.flatMap((light): Snag[] => {
    const setup = look.lights[light.id]
    const head = setup && checkView.plan.heads[setup.headId]
    if (!light.on || !setup || !head || isBackground(checkView, light.id)) return []
    const perLumenSecond = lightAtPoint(scene, light.id, lens).direct.flat
    const gelPass = Math.exp(-light.gel.meterLossStops * Math.LN2)
    const luxSeconds = perLumenSecond * light.energyJoules * head.efficacyLumenSecondsPerJoule * gelPass
    const { stops } = meterReading(luxSeconds, measured.taking, receptorConstant(look.meter, 'flat'))
    if (stops === null || stops <= LENS_STRAY_STOPS) return []
    return [{
      key: `lens-sees-light:${light.id}`,
      rule: 'lens-sees-light',
      severity: 'look',
      message: `${light.letter} shines into the lens at ${stopsText(stops)}: veil and flare`,
      action: setup.grid.kind === 'none'
        ? `Put a flag between ${light.letter} and the lens, grid ${light.letter}, or use a hood`
        : `Put a flag between ${light.letter} and the lens, or turn ${light.letter} away`,
      value: stops,
      threshold: LENS_STRAY_STOPS,
      unit: 'stops at the lens',
      about: [light.id],
    }]
  })
}

const CORNERS = [[0, 0], [1, 0], [0, 1], [1, 1]] as const

/** A lit box or scrim behind that ends inside the picture. */
export const frontNotFilling: Check = ({ scene, measured }) => {
  if (measured.background.behind !== 'front') return []
  const middle = behindAt(scene, 0.5, 0.5)
  const missed = CORNERS.filter(([x, y]) => {
    const met = behindAt(scene, x, y)
    return met.lightId !== middle.lightId || met.surfaceId !== middle.surfaceId
  }).length
  if (missed === 0) return []
  const metresAcross = measured.framing.atSubjectWidthMetres * (middle.distanceMetres / measured.framing.subjectDistanceMetres)
  const metresHigh = measured.framing.atSubjectHeightMetres * (middle.distanceMetres / measured.framing.subjectDistanceMetres)
  return [{
    key: 'front-not-filling:background',
    rule: 'front-not-filling',
    severity: 'look',
    message: `The lit front behind does not fill the frame: ${missed} of 4 corners miss it`,
    action: `At its distance the frame is ${centimetresText(metresAcross)} × ${centimetresText(metresHigh)}: bring it nearer to the subject, use a larger one, or crop tighter`,
    value: missed,
    threshold: 0,
    unit: 'corners missed',
    about: ['background-centre'],
  }]
}

/** Paper that ends inside the picture. */
export const backdropNotFilling: Check = ({ scene, measured }) => {
  if (measured.background.behind !== 'paper') return []
  const missed = CORNERS.filter(([x, y]) => behindAt(scene, x, y).kind === 'wall').length
  if (missed === 0) return []
  return [{
    key: 'backdrop-not-filling:background',
    rule: 'backdrop-not-filling',
    severity: 'look',
    message: `The frame runs off the paper in ${missed} of 4 corners`,
    action: `The frame is ${centimetresText(measured.framing.atBackdropWidthMetres)} wide at the paper: bring the paper nearer, use a wider roll, or crop tighter`,
    value: missed,
    threshold: 0,
    unit: 'corners missed',
    about: ['backdrop'],
  }]
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
