import { timesFromStops, stopsFromTimes } from '../../arithmetic/portable.ts'
import { changeBackdrop } from '../../plan/edits/look.ts'
import { setUpByPlane } from '../../plan/edits/snags.ts'
import type { Snag } from '../snag.ts'
import { amountText, mendBy, type Check } from './check.ts'
import { movedTo } from './lightMends.ts'

/** A soft key stands at one to one and a half times its size; nearer than 0.6 it lights unevenly (common practice, no source). */
const FARTHEST_TIMES_SIZE = 1.5
const NEAREST_TIMES_SIZE = 0.6
/** From the subject to the paper: with an open box, and with all lights gridded (common practice, no source). */
const PAPER_FROM_OPEN_METRES = 1.8
const PAPER_FROM_GRIDDED_METRES = 1.2

const soft = ['softbox', 'octa', 'umbrella-white', 'umbrella-silver', 'umbrella-diffused', 'umbrella-shoot-through']

/** The distance of a soft key against its size. A hard key is meant to be hard. */
export const keyDistance: Check = (view) =>
  view.measured.lights.flatMap((light): Snag[] => {
    const setup = view.look.lights[light.id]
    const modifier = setup && view.plan.modifiers[setup.modifierId]
    const served = view.measured.areas.find(({ id }) => id === light.serves)
    if (!light.on || light.plane !== 'front' || !modifier || !served || !soft.includes(modifier.kind)) return []
    const size = Math.min(modifier.widthMetres, modifier.heightMetres)
    const times = light.distanceMetres / size
    const isFar = times > FARTHEST_TIMES_SIZE
    if (!isFar && times >= NEAREST_TIMES_SIZE) return []
    const metres = size * (isFar ? FARTHEST_TIMES_SIZE : NEAREST_TIMES_SIZE)
    // The square law, for a start: the wanted level says what is left.
    const stops = 2 * stopsFromTimes(metres / light.distanceMetres)
    const way = isFar ? 'in' : 'back'
    return [{
      key: `${isFar ? 'key-distance' : 'key-too-near'}:${light.id}`,
      rule: isFar ? 'key-distance' : 'key-too-near',
      severity: 'note',
      message: `${light.letter} stands at ${times.toFixed(1)} times its size: ${isFar ? 'harder than it could be' : 'uneven over the face'}`,
      action: `Move ${light.letter} ${way} to ${metres.toFixed(2)} m and ${isFar ? 'lower' : 'raise'} it by about ${amountText(stops)}`,
      value: times,
      threshold: isFar ? FARTHEST_TIMES_SIZE : NEAREST_TIMES_SIZE,
      unit: 'times its size',
      about: [light.id],
      ...mendBy(`Move ${light.letter} ${way} to ${metres.toFixed(2)} m`,
        movedTo(view, light.id, served.place, metres, light.energyJoules * timesFromStops(stops))),
    }]
  })

/** The paper stands clear of what lights the subject. */
export const paperDistance: Check = ({ plan, look, measured: { lookId, background, lights } }) => {
  if (background.behind !== 'paper') return []
  const open = lights.filter((light) => light.on && light.plane !== 'background' && look.lights[light.id]?.grid.kind === 'none')
  const wanted = open.length > 0 ? PAPER_FROM_OPEN_METRES : PAPER_FROM_GRIDDED_METRES
  const metres = look.backdrop.yMetres - look.subject.yMetres
  if (metres >= wanted) return []
  const yMetres = look.subject.yMetres + wanted
  const fits = yMetres < plan.room.markFromRearWallMetres
  return [{
    key: 'paper-distance:backdrop',
    rule: 'paper-distance',
    severity: 'look',
    message: `The paper is ${metres.toFixed(2)} m behind the subject${open.length > 0 ? `, and ${open.map(({ letter }) => letter).join(', ')} ${open.length === 1 ? 'is' : 'are'} open` : ''}`,
    action: fits
      ? `Move the paper ${Math.round((wanted - metres) * 100)} cm back${open.length > 0 ? ', or grid what is open' : ''}`
      : 'Bring subject and camera forward, or grid what is open',
    value: metres,
    threshold: wanted,
    unit: 'm',
    about: ['backdrop'],
    ...(fits ? mendBy(`Paper back to ${wanted.toFixed(1)} m`, changeBackdrop(plan, lookId, { yMetres })) : {}),
  }]
}

/** A gelled background is set first, with the key off: later its colour cannot be judged by itself. */
export const setUpOrder: Check = ({ plan, look, measured: { lights, lookId } }) => {
  const orderOf = (id: string) => look.lights[id]?.setUpOrder ?? 0
  const gelled = lights.filter((light) => light.on && light.plane === 'background' && !light.gel.clear)
  const last = Math.max(...gelled.map(({ id }) => orderOf(id)))
  const before = lights.filter((light) => light.on && light.plane !== 'background' && orderOf(light.id) < last)
  if (gelled.length === 0 || before.length === 0) return []
  return [{
    key: 'set-up-order:look',
    rule: 'set-up-order',
    severity: 'note',
    message: `${before.map(({ letter }) => letter).join(', ')} ${before.length === 1 ? 'is' : 'are'} set up before the background’s gel`,
    action: 'Set the background first with the key off, then edge, shadow side, key, and all together',
    value: before.length,
    threshold: 0,
    unit: 'lights before it',
    about: gelled.map(({ id }) => id),
    ...mendBy('Background first', setUpByPlane(plan, lookId)),
  }]
}
