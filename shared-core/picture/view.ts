import { distance, type Vector } from '../arithmetic/vector.ts'
import { framePositionOf, type CameraView } from '../set/camera.ts'
import type { Emitter } from '../set/emitter.ts'
import type { Scene } from '../set/scene.ts'
import { GroundFinder } from './ground.ts'
import { groundNets, receiverAt, type GroundNet } from './groundNet.ts'
import { groundSamples, type GroundSamples } from './groundSamples.ts'
import type { SurfaceSamples } from './surfaceSamples.ts'

/** What the camera sees, before any light: all that a layer rests on. */
export interface View {
  readonly width: number
  readonly height: number
  readonly samples: SurfaceSamples
  readonly ground: GroundSamples
  readonly nets: readonly (GroundNet | null)[]
  /** A ball around all of the background that is seen. */
  readonly groundMiddle: Vector
  readonly groundRadiusMetres: number
}

export function viewOf(scene: Scene, samples: SurfaceSamples, width: number, height: number): View {
  const ground = groundSamples(new GroundFinder(scene), samples, width, height)
  const nets = groundNets(ground)
  const corners = nets.flatMap((net) => (net === null ? [] : cornerNodes(net).map((node) => receiverAt(net, ground, node).place)))
  const groundMiddle = [0, 1, 2].map((k) => corners.reduce((sum, corner) => sum + corner[k]!, 0) / Math.max(1, corners.length)) as unknown as Vector
  return {
    width, height, samples, ground, nets,
    groundMiddle,
    groundRadiusMetres: corners.reduce((most, corner) => Math.max(most, distance(corner, groundMiddle)), 0),
  }
}

function cornerNodes({ columns, rows }: GroundNet): readonly number[] {
  return [0, columns - 1, columns * (rows - 1), columns * rows - 1]
}

/** Whether a lit front could be met in the Frame: its lit side shows, and not all of it lies off the same edge. */
export function mayBeSeen(view: CameraView, { centre, axis, outline }: Emitter): boolean {
  const towards = (view.place[0] - centre[0]) * axis[0] + (view.place[1] - centre[1]) * axis[1] + (view.place[2] - centre[2]) * axis[2]
  if (towards <= 0) return false
  const corners = outline.map((corner) => framePositionOf(view, corner))
  // A corner behind the camera projects to the wrong side: better asked once too often.
  if (corners.some(({ depthMetres }) => depthMetres <= 0)) return corners.some(({ depthMetres }) => depthMetres > 0)
  return !(corners.every(({ frameX }) => frameX < 0) || corners.every(({ frameX }) => frameX > 1) ||
    corners.every(({ frameY }) => frameY < 0) || corners.every(({ frameY }) => frameY > 1))
}
