import { timesFromStops } from '../../arithmetic/portable.ts'
import type { Snag } from '../snag.ts'
import type { RoomSide } from '../fit.ts'
import { learnedStopsOf } from '../learnedStops.ts'
import { meterReading, receptorConstant } from '../taking.ts'
import { capital } from '../../plan/capital.ts'
import { formatStops } from '../../plan/entry/stops.ts'
import { movePiece } from '../../plan/edits/pieces.ts'
import { moveLight } from '../../plan/edits/placing.ts'
import { centimetresText, mendBy, type Check, type CheckView } from './check.ts'
import { gridOn } from './lightMends.ts'

/** Stray light on the lens below this, against the aperture, is lost in its ordinary veil (common practice, no source). */
const LENS_STRAY_STOPS = -3

const SIDES: Readonly<Record<RoomSide, readonly [what: string, away: string]>> = {
  left: ['the camera-left wall', 'to camera right'],
  right: ['the camera-right wall', 'to camera left'],
  rear: ['the rear wall', 'towards the camera'],
  front: ['the front wall', 'towards the backdrop'],
  ceiling: ['the clearance under the ceiling', 'down'],
  floor: ['the floor', 'up'],
}

/** Walls and ceiling. */
export const outsideRoom: Check = (view) =>
  view.fit.things.flatMap(({ id, past }): Snag[] => {
    if (!past) return []
    const name = nameOf(view, id)
    const [what, away] = SIDES[past.side]
    return [{
      key: `outside-room:${id}`,
      rule: 'outside-room',
      severity: 'stop',
      message: `${capital(name)} does not fit: ${centimetresText(past.metres)} into ${what}`,
      action: `Move ${name} ${centimetresText(past.metres + 0.05)} ${away}`,
      value: past.metres,
      threshold: 0,
      unit: 'm',
      about: [id],
      ...mendBy(`Move ${name} ${centimetresText(past.metres + 0.05)} ${away}`, movedBack(view, id, past.side, past.metres + 0.05)),
    }]
  })

/** A light, its stand or a piece in the picture. */
export const inFrame: Check = (view) =>
  view.fit.things.flatMap(({ id, seenCorners, seenStand }): Snag[] => {
    const hangs = view.look.lights[id]?.support === 'boom'
    const seen = seenCorners + (hangs ? 0 : seenStand)
    if (seen === 0) return []
    const name = nameOf(view, id)
    return [{
      key: `in-frame:${id}`,
      rule: 'in-frame',
      severity: 'look',
      message: `${capital(seenCorners === 0 ? `${name}’s stand` : name)} is in the frame`,
      action: `Move ${name} out to the side, or crop tighter`,
      value: seen,
      threshold: 0,
      unit: 'points seen',
      about: [id],
    }]
  })

/** Light that reaches the lens from outside the picture only hazes it. */
export const lensSeesLight: Check = (view) =>
  view.measured.lights.flatMap((light): Snag[] => {
    const { plan, look, fit, measured } = view
    const setup = look.lights[light.id]
    const head = setup && plan.heads[setup.headId]
    const perLumenSecond = fit.atLens.get(light.id) ?? 0
    if (!light.on || !setup || !head || perLumenSecond <= 0) return []
    const gelPass = Math.exp(-light.gel.meterLossStops * Math.LN2)
    const learned = timesFromStops(learnedStopsOf(plan, setup))
    const luxSeconds = perLumenSecond * light.energyJoules * head.efficacyLumenSecondsPerJoule * gelPass * learned
    const { stops } = meterReading(luxSeconds, measured.taking, receptorConstant(look.meter, 'flat'))
    if (stops === null || stops <= LENS_STRAY_STOPS) return []
    const gridded = gridOn(view, light.id)
    const grid = gridded ? `grid ${light.letter}, or use a hood` : `or turn ${light.letter} away`
    return [{
      key: `lens-sees-light:${light.id}`,
      rule: 'lens-sees-light',
      severity: 'look',
      message: `${light.letter} shines into the lens at ${formatStops(stops)}: veil and flare`,
      action: `Put a flag between ${light.letter} and the lens, ${grid}`,
      value: stops,
      threshold: LENS_STRAY_STOPS,
      unit: 'stops at the lens',
      about: [light.id],
      ...mendBy(`Grid ${light.letter}`, gridded),
    }]
  })

/** A lit box or scrim behind that ends inside the picture. */
export const frontNotFilling: Check = ({ fit, measured: { background, framing } }) => {
  if (background.behind !== 'front' || fit.cornersMissed === 0) return []
  const times = fit.middle.distanceMetres / framing.subjectDistanceMetres
  return [{
    key: 'front-not-filling:background',
    rule: 'front-not-filling',
    severity: 'look',
    message: `The lit front behind does not fill the frame: ${fit.cornersMissed} of 4 corners miss it`,
    action: `At its distance the frame is ${centimetresText(framing.atSubjectWidthMetres * times)} × ${centimetresText(framing.atSubjectHeightMetres * times)}: bring it nearer to the subject, use a larger one, or crop tighter`,
    value: fit.cornersMissed,
    threshold: 0,
    unit: 'corners missed',
    about: ['background-centre'],
  }]
}

/** Paper that ends inside the picture. */
export const backdropNotFilling: Check = ({ fit, measured: { background, framing } }) => {
  if (background.behind !== 'paper' || fit.wallCorners === 0) return []
  return [{
    key: 'backdrop-not-filling:background',
    rule: 'backdrop-not-filling',
    severity: 'look',
    message: `The frame runs off the paper in ${fit.wallCorners} of 4 corners`,
    action: `The frame is ${centimetresText(framing.atBackdropWidthMetres)} wide at the paper: bring the paper nearer, use a wider roll, or crop tighter`,
    value: fit.wallCorners,
    threshold: 0,
    unit: 'corners missed',
    about: ['backdrop'],
  }]
}

const AWAY: Readonly<Record<RoomSide, readonly [axis: 'xMetres' | 'yMetres' | 'zMetres', way: 1 | -1]>> = {
  left: ['xMetres', 1],
  right: ['xMetres', -1],
  rear: ['yMetres', -1],
  front: ['yMetres', 1],
  ceiling: ['zMetres', -1],
  floor: ['zMetres', 1],
}

function movedBack({ plan, look, measured: { lookId } }: CheckView, id: string, side: RoomSide, metres: number) {
  const [axis, way] = AWAY[side]
  const at = (look.lights[id] ?? look.pieces[id])?.place[axis] ?? 0
  const place = { [axis]: at + way * metres }
  return look.lights[id] ? moveLight(plan, lookId, id, place) : movePiece(plan, lookId, id, place)
}

function nameOf({ look }: CheckView, id: string): string {
  const piece = look.pieces[id]
  return look.lights[id]?.letter ?? (piece ? `the ${piece.label || piece.kind}` : id)
}
