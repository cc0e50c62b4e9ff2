import { type Vector, add, cross, direction, dot, scale, subtract } from '../arithmetic/vector.ts'
import { degreesFromRadians } from '../arithmetic/portable.ts'
import { vectorOf } from './emitter.ts'
import type { SceneCamera } from './scene.ts'

/** The camera's own axes and the size of its field for each metre ahead. */
export interface CameraView {
  readonly place: Vector
  readonly ahead: Vector
  readonly right: Vector
  readonly up: Vector
  /** Width and height of the field one metre ahead. */
  readonly widthPerMetre: number
  readonly heightPerMetre: number
  readonly focusMetres: number
}

export interface FrameSize {
  readonly widthMetres: number
  readonly heightMetres: number
}

/** A place as seen in the Frame: 0-1 from the left and from the top inside it. */
export interface FramePosition {
  readonly frameX: number
  readonly frameY: number
  /** Along the camera's axis; not positive for what lies behind the camera. */
  readonly depthMetres: number
}

/**
 * The field is sensor x distance / focal length, the photographer's rule: at portrait distances the lens's own extension
 * takes some 4 % off it, or nothing where focusing is internal (see exposure/fieldOfView for a simple lens).
 *
 * @param camera focal length and sensor as held, in millimetres; the aim is where it is focused
 */
export function cameraView(camera: SceneCamera): CameraView {
  const place = vectorOf(camera.place)
  const sight = subtract(vectorOf(camera.aim), place)
  const ahead = direction(sight)
  const right = direction(cross(ahead, [0, 0, 1]), [1, 0, 0])
  const focusMetres = Math.sqrt(dot(sight, sight))
  return {
    place,
    ahead,
    right,
    up: cross(right, ahead),
    widthPerMetre: camera.sensorWidthMillimetres / camera.focalLengthMillimetres,
    heightPerMetre: camera.sensorHeightMillimetres / camera.focalLengthMillimetres,
    focusMetres,
  }
}

/** Size of the field at a distance along the axis. */
export function frameSizeAt(view: CameraView, depthMetres: number): FrameSize {
  return { widthMetres: view.widthPerMetre * depthMetres, heightMetres: view.heightPerMetre * depthMetres }
}

/** Where a place falls in the Frame. */
export function framePositionOf(view: CameraView, place: Vector): FramePosition {
  const from = subtract(place, view.place)
  const depthMetres = dot(from, view.ahead)
  const safeDepth = Math.abs(depthMetres) < 1e-9 ? 1e-9 : depthMetres
  return {
    frameX: 0.5 + dot(from, view.right) / (safeDepth * view.widthPerMetre),
    frameY: 0.5 - dot(from, view.up) / (safeDepth * view.heightPerMetre),
    depthMetres,
  }
}

/** Unit direction of sight through a position in the Frame. */
export function sightThrough(view: CameraView, frameX: number, frameY: number): Vector {
  const sideways = scale(view.right, (frameX - 0.5) * view.widthPerMetre)
  const upwards = scale(view.up, (0.5 - frameY) * view.heightPerMetre)
  return direction(add(view.ahead, add(sideways, upwards)))
}

/** Whether a position lies in the Frame widened by `margin` (a share of its size) on every side. */
export function isInFrame(position: FramePosition, margin = 0): boolean {
  return position.depthMetres > 0 && position.frameX >= -margin && position.frameX <= 1 + margin &&
    position.frameY >= -margin && position.frameY <= 1 + margin
}

export interface AnglesOfView {
  readonly horizontalDegrees: number
  readonly verticalDegrees: number
  readonly diagonalDegrees: number
}

/** Angles of view across, down and corner to corner. */
export function anglesOfView(view: CameraView): AnglesOfView {
  const across = (size: number) => degreesFromRadians(2 * Math.atan(size / 2))
  return {
    horizontalDegrees: across(view.widthPerMetre),
    verticalDegrees: across(view.heightPerMetre),
    diagonalDegrees: across(Math.sqrt(view.widthPerMetre * view.widthPerMetre + view.heightPerMetre * view.heightPerMetre)),
  }
}
