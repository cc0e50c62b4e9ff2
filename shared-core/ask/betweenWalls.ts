import { applyEdit, type PlanEdit } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { Remedy } from './remedies.ts'

const MOST_TRIES = 6
const WORTH_MOVING_METRES = 0.02
/** Nearer to one wall than this share of the width, a set is no longer in the room but along it. */
const LEAST_SHARE = 0.3
const WALLS = ['left', 'right'] as const

/**
 * The room at another width: all that would stand in a side wall moved in, with the T at its share of the width, and
 * once more with the T moved over to the wall that is less in the way.
 */
export function betweenWalls(plan: Plan, lookId: string, widthMetres: number, predictor: Predictor): readonly Remedy[] {
  const share = plan.room.markFromLeftWallMetres / plan.room.widthMetres
  const kept = rounded(share * widthMetres)
  const past = pastWalls(applyEdit(plan, roomAt(widthMetres, kept)), lookId, predictor)
  // Where only one wall is in the way, the other side gives all it can; where both are, they share it.
  const most = (past.left - past.right) * (past.left === 0 || past.right === 0 ? 1 : 0.5)
  const places = [0, 0.5, 1].map((part) => rounded(Math.min(Math.max(kept + part * most, LEAST_SHARE * widthMetres), (1 - LEAST_SHARE) * widthMetres)))
  const tried = places.filter((place, i) => i === 0 || places.slice(0, i).every((other) => Math.abs(place - other) > WORTH_MOVING_METRES))
  return tried.map((place, i) => {
    const { title, edit } = movedIn(plan, lookId, roomAt(widthMetres, i === 0 ? kept : place), predictor)
    if (i === 0) return { title, edit }
    const words = `the T ${Math.round(Math.abs(place - kept) * 100)} cm nearer to the camera-${place < kept ? 'left' : 'right'} wall`
    return { title: title === ALL_FITS ? `All fits with ${words}` : `${title}, ${words}`, edit }
  })
}

const ALL_FITS = 'All fits as it is'

function roomAt(widthMetres: number, markFromLeftWallMetres: number): PlanEdit {
  return {
    name: 'fewerHeads',
    changes: [
      { path: ['room', 'widthMetres'], set: widthMetres },
      { path: ['room', 'markFromLeftWallMetres'], set: rounded(Math.min(Math.max(markFromLeftWallMetres, 0.01), widthMetres)) },
    ],
  }
}

/** Moves in what the prediction finds in a wall, by as much as it says, until it finds no more. */
function movedIn(plan: Plan, lookId: string, room: PlanEdit, predictor: Predictor): Remedy {
  let edit = room
  const moved = new Set<string>()
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const inWall = outside(applyEdit(plan, edit), lookId, predictor)
    if (inWall.length === 0) break
    edit = { ...edit, changes: [...edit.changes, ...inWall.flatMap(({ mend }) => mend?.edit.changes ?? [])] }
    for (const { about } of inWall) moved.add(nameOf(plan, lookId, about[0] ?? ''))
  }
  return { title: moved.size === 0 ? ALL_FITS : `${[...moved].sort().join(', ')} moved in`, edit }
}

function pastWalls(plan: Plan, lookId: string, predictor: Predictor): Readonly<Record<(typeof WALLS)[number], number>> {
  const most = (wall: (typeof WALLS)[number]): number =>
    Math.max(0, ...outside(plan, lookId, predictor).filter(({ message }) => message.includes(`camera-${wall} wall`)).map(({ value }) => value))
  return { left: most('left'), right: most('right') }
}

function outside(plan: Plan, lookId: string, predictor: Predictor) {
  return predictor(plan, lookId).snags.filter(({ rule, message }) => rule === 'outside-room' && WALLS.some((wall) => message.includes(`camera-${wall} wall`)))
}

function nameOf(plan: Plan, lookId: string, id: string): string {
  const look = plan.looks[lookId]!
  return look.lights[id]?.letter ?? look.pieces[id]?.label ?? id
}

const rounded = (metres: number): number => Math.round(metres * 1000) / 1000
