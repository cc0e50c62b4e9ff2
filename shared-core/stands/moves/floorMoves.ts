import { formatFNumber } from '../../plan/entry/aperture.ts'
import { formatIso, formatKelvin, formatShutter } from '../../plan/entry/camera.ts'
import { formatLength } from '../../plan/entry/length.ts'
import { LEAST_METRES, offset, wayWords } from '../sinceTick.ts'
import type { MoveContext } from './moveContext.ts'
import type { Move } from './move.ts'
import { MINUTES } from './moveMinutes.ts'
import type { RiggedSet } from './rigged.ts'

/** What changes that is no light and no piece: the T, the camera, the backdrop. */
export function floorMoves(from: RiggedSet, to: RiggedSet, context: MoveContext): readonly Move[] {
  return [markMove(from, to, context), backdropMove(from, to, context), cameraMove(from, to, context)].filter((move) => move !== null)
}

function markMove({ mark: was }: RiggedSet, { mark }: RiggedSet, { units }: MoveContext): Move | null {
  const words = wayWords({ xMetres: mark.xMetres - was.xMetres, yMetres: mark.yMetres - was.yMetres, zMetres: 0 }, units)
  if (words.length === 0) return null
  return { ...one('marks', 'The T', [`Tape the T ${words.join(', ')}`], MINUTES.markT), change: { mark } }
}

function backdropMove({ backdrop: was }: RiggedSet, { backdrop: now }: RiggedSet, { units }: MoveContext): Move | null {
  const isRoll = was.kind !== now.kind || was.swatch !== now.swatch || Math.abs(was.widthMetres - now.widthMetres) >= LEAST_METRES
  const way = wayWords({ xMetres: now.centreXMetres - was.centreXMetres, yMetres: now.yMetres - was.yMetres, zMetres: now.topMetres - was.topMetres }, units)
  if (!isRoll && way.length === 0) return null
  const words = now.kind === 'none' ? ['Take the paper down'] : [
    ...(isRoll ? [`Hang the other paper, ${formatLength(now.widthMetres, units)} wide`] : []), ...(way.length > 0 ? [way.join(', ')] : []),
  ]
  return {
    ...one('backdrop', 'Backdrop', words, isRoll ? MINUTES.backdropRoll : MINUTES.backdropMove, ['Two people on a roll; nobody underneath while it hangs free.']),
    people: 2, change: { backdrop: now },
  }
}

function cameraMove({ camera: was }: RiggedSet, { camera: now }: RiggedSet, { units }: MoveContext): Move | null {
  const way = wayWords(offset(was.place, now.place), units)
  const isTurned = wayWords(offset(was.aim, now.aim), units).length > 0
  const settings = [
    ...(was.focalLengthMillimetres !== now.focalLengthMillimetres ? [`${now.focalLengthMillimetres} mm`] : []),
    ...(was.fNumber !== now.fNumber ? [formatFNumber(now.fNumber)] : []),
    ...(was.shutterSeconds !== now.shutterSeconds ? [formatShutter(now.shutterSeconds)] : []),
    ...(was.isoSpeed !== now.isoSpeed ? [formatIso(now.isoSpeed)] : []),
    ...(was.whiteBalanceKelvin !== now.whiteBalanceKelvin ? [`white balance ${formatKelvin(now.whiteBalanceKelvin)}`] : []),
  ]
  const words = [...(way.length > 0 ? [way.join(', ')] : isTurned ? ['aim it anew'] : []), ...(settings.length > 0 ? [`set ${settings.join(', ')}`] : [])]
  if (words.length === 0) return null
  const minutes = (way.length > 0 || isTurned ? MINUTES.cameraMove : 0) + (settings.length > 0 ? MINUTES.cameraSettings : 0)
  return { ...one('camera', 'Camera', words, minutes), change: { camera: now } }
}

function one(kind: 'marks' | 'camera' | 'backdrop', name: string, words: readonly string[], minutes: number, cautions: readonly string[] = []): Move {
  return { id: kind, kind, name, thing: kind, words, minutes, people: 1, cautions, change: {} }
}
