import { type Vector, add, cross, direction, dot, scale, subtract } from '../arithmetic/vector.ts'
import { degreesFromRadians } from '../arithmetic/portable.ts'
import { vectorOf } from './emitter.ts'
import type { FrameCrop, SceneCamera } from './scene.ts'

const WHOLE_FRAME: FrameCrop = { left: 0, top: 0, width: 1, height: 1 }

/** The camera's own axes and the size of its field for each metre ahead. */
export interface CameraView {
  readonly place: Vector
  readonly ahead: Vector
  readonly right: Vector
  readonly up: Vector
  /** Width and height of the field one metre ahead. */
  readonly widthPerMetre: number
  readonly heightPerMetre: number
  /** Where the camera's axis goes through the field, 0-1 from the left and the top: the middle, but for a part of a Frame. */
  readonly axisX: number
  readonly axisY: number
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
 * takes some 4 % off it, or nothing where focusing is internal.
 *
 * A crop narrows the field and moves it off the axis, as a smaller sensor set off the middle would: the perspective stays.
 *
 * @param camera focal length and sensor as held, in millimetres; the aim is where it is focused
 */
export function cameraView(camera: SceneCamera): CameraView {
  const place = vectorOf(camera.place)
  const sight = subtract(vectorOf(camera.aim), place)
  const ahead = direction(sight)
  const right = direction(cross(ahead, [0, 0, 1]), [1, 0, 0])
  const crop = camera.crop ?? WHOLE_FRAME
  const focusMetres = Math.sqrt(dot(sight, sight))
  return {
    place,
    ahead,
    right,
    up: cross(right, ahead),
    widthPerMetre: (crop.width * camera.sensorWidthMillimetres) / camera.focalLengthMillimetres,
    heightPerMetre: (crop.height * camera.sensorHeightMillimetres) / camera.focalLengthMillimetres,
    axisX: (0.5 - crop.left) / crop.width,
    axisY: (0.5 - crop.top) / crop.height,
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
    frameX: view.axisX + dot(from, view.right) / (safeDepth * view.widthPerMetre),
    frameY: view.axisY - dot(from, view.up) / (safeDepth * view.heightPerMetre),
    depthMetres,
  }
}

/** Unit direction of sight through a position in the Frame. */
export function sightThrough(view: CameraView, frameX: number, frameY: number): Vector {
  const sideways = scale(view.right, (frameX - view.axisX) * view.widthPerMetre)
  const upwards = scale(view.up, (view.axisY - frameY) * view.heightPerMetre)
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
