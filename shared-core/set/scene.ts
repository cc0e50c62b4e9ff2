import type { Grid } from '../photometry/grid.ts'
import type { Modifier } from '../photometry/modifier.ts'

/**
 * The set as the physics needs it. Field names and units are those of the plan, so that a look, its room and its kit
 * go in without conversion; the types stand here on their own because the physics must not depend on the plan.
 *
 * Axes: x to camera right, y from the camera to the backdrop, z up, metres, zero at the subject's T.
 */
export interface ScenePlace {
  readonly xMetres: number
  readonly yMetres: number
  readonly zMetres: number
}

/** A modifier as photometry knows it, and how deep it is for fit checks. */
export interface SceneModifier extends Modifier {
  readonly depthMetres: number
}

export interface SceneLight {
  readonly id: string
  /** Centre of the front of the modifier. */
  readonly place: ScenePlace
  readonly aim: ScenePlace
  readonly rollDegrees: number
  readonly modifier: SceneModifier
  readonly grid: Grid
}

export interface ScenePiece {
  readonly id: string
  readonly kind: 'flag' | 'v-flat' | 'board' | 'scrim'
  /** Centre of the piece; of the hinge line for a V-flat. */
  readonly place: ScenePlace
  /** 0 faces the camera, 90 camera right. */
  readonly facingDegrees: number
  readonly tiltDegrees: number
  /** Of one panel. */
  readonly widthMetres: number
  readonly heightMetres: number
  readonly openDegrees: number
  readonly front: string
  readonly back: string
  /** Share of the light that leaves on the far side of a scrim. */
  readonly transmittance: number
}

export interface SceneSubject {
  readonly xMetres: number
  readonly yMetres: number
  readonly posture: 'standing' | 'sitting'
  readonly heightMetres: number
  readonly turnDegrees: number
  readonly headTurnDegrees: number
  readonly headTiltDegrees: number
}

export interface SceneBackdrop {
  readonly kind: 'paper' | 'none'
  readonly swatch: string
  readonly yMetres: number
  readonly centreXMetres: number
  readonly widthMetres: number
  readonly topMetres: number
}

export interface SceneColumn {
  readonly xMetres: number
  readonly yMetres: number
  readonly widthMetres: number
  readonly depthMetres: number
}

export const roomSurfaceNames = ['leftWall', 'rightWall', 'rearWall', 'frontWall', 'ceiling', 'floor'] as const
export type RoomSurfaceName = (typeof roomSurfaceNames)[number]

export interface SceneRoom {
  readonly widthMetres: number
  readonly lengthMetres: number
  readonly heightMetres: number
  readonly markFromLeftWallMetres: number
  readonly markFromRearWallMetres: number
  readonly surfaces: Readonly<Record<RoomSurfaceName, string>>
  readonly columns: Readonly<Record<string, SceneColumn>>
}

export interface SceneCamera {
  readonly place: ScenePlace
  readonly aim: ScenePlace
  readonly focalLengthMillimetres: number
  /** As held: an upright frame has the long side as its height. */
  readonly sensorWidthMillimetres: number
  readonly sensorHeightMillimetres: number
  /** Only this part of the Frame is looked at; all of it unless said. */
  readonly crop?: FrameCrop
}

/** A part of the Frame: its left and top edge and its size, as shares of the Frame's width and height. */
export interface FrameCrop {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

export interface Scene {
  readonly lights: readonly SceneLight[]
  readonly pieces: readonly ScenePiece[]
  readonly subject: SceneSubject
  readonly backdrop: SceneBackdrop
  readonly room: SceneRoom
  readonly camera: SceneCamera
}
