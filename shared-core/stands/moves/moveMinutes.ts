import type { Piece } from '../../plan/schema/look.ts'

/** Minutes of one practised person for each kind of work at a change of look. Common practice, no source. */
export const MINUTES = {
  powerDown: 0.5,
  headSwap: 3,
  modifierOff: 1,
  modifierOn: 1,
  grid: 0.5,
  gel: 1,
  standSwap: 1.5,
  carryAndTape: 2,
  aim: 0.5,
  boom: 2,
  sandbagOrCable: 0.25,
  plug: 0.5,
  powerAndLetter: 0.5,
  lightAway: 2,
  lightFromCase: 4,
  markT: 0.5,
  cameraMove: 2,
  cameraSettings: 0.5,
  backdropMove: 4,
  backdropRoll: 5,
  workingLight: 0.25,
  reading: 1,
} as const

/** Up, away, moved on the floor or turned where it stands. A large frame takes both people. Common practice, no source. */
export function pieceMinutes(kind: Piece['kind']): { readonly up: number; readonly away: number; readonly moved: number; readonly turned: number } {
  return kind === 'scrim' ? { up: 4, away: 2, moved: 2, turned: 1 } : { up: 1.5, away: 1, moved: 1, turned: 0.5 }
}

/** What a head needs between power off and hands on gel, tube or modifier. Common practice, no source: the head's manual comes first. */
export function coolingMinutes(modellingLamp: 'none' | 'led' | 'halogen' | undefined): number {
  return modellingLamp === 'halogen' ? 5 : 1
}

/** A frame this large is carried by two. Common practice, no source. */
export const TWO_PEOPLE_FRAME_METRES = 1.5
/** A stand this high has a heavy leg under its load. Common practice, no source. */
export const TALL_STAND_METRES = 2
