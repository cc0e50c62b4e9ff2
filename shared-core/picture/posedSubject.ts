import { radiansFromDegrees, cosine, sine } from '../arithmetic/portable.ts'
import type { Vector } from '../arithmetic/vector.ts'
import type { SceneSubject } from '../set/scene.ts'
import { SITTING_DROP } from '../set/subjectForm.ts'
import type { SubjectAsset } from '../subject/asset/format.ts'
import { STATURE_METRES } from '../subject/field/subjectField.ts'
import { headWeightAt, NECK_PIVOT, turnWithHead, type HeadPose } from '../subject/mesh/pose.ts'

/** The subject's surface standing in the set, in metres. */
export interface PosedSubject {
  readonly asset: SubjectAsset
  readonly positions: Float32Array
  readonly normals: Float32Array
  /** Per vertex, how much it follows the head: 0-1. */
  readonly headWeights: Float32Array
  readonly pose: HeadPose
  readonly turnRadians: number
  /** Where the rest origin stands, and the size against the rest form. */
  readonly place: Vector
  readonly scale: number
}

const headWeightsOf = new WeakMap<SubjectAsset, Float32Array>()

export function poseSubject(asset: SubjectAsset, subject: SceneSubject): PosedSubject {
  const count = asset.positions.length / 3
  const scale = subject.heightMetres / STATURE_METRES
  const drop = subject.posture === 'sitting' ? SITTING_DROP * subject.heightMetres : 0
  const pose = { turnRadians: radiansFromDegrees(subject.headTurnDegrees), tiltRadians: radiansFromDegrees(subject.headTiltDegrees) }
  const turnRadians = radiansFromDegrees(subject.turnDegrees)
  const [c, s] = [cosine(turnRadians), sine(turnRadians)]
  const headTurns = pose.turnRadians !== 0 || pose.tiltRadians !== 0
  const headWeights = restHeadWeights(asset)
  const positions = Float32Array.from(asset.positions)
  const normals = Float32Array.from(asset.normals)
  for (let v = 0; v < count; v++) {
    const at = 3 * v
    const weight = headWeights[v]!
    if (headTurns && weight > 0) {
      turnWithHead(positions, at, weight, pose, NECK_PIVOT)
      turnWithHead(normals, at, weight, pose, ORIGIN)
    }
    const [x, y, z] = [positions[at]! * scale, positions[at + 1]! * scale, positions[at + 2]! * scale]
    positions[at] = subject.xMetres + x * c - y * s
    positions[at + 1] = subject.yMetres + x * s + y * c
    positions[at + 2] = z - drop
    const [nx, ny] = [normals[at]!, normals[at + 1]!]
    normals[at] = nx * c - ny * s
    normals[at + 1] = nx * s + ny * c
  }
  const place: Vector = [subject.xMetres, subject.yMetres, -drop]
  return { asset, positions, normals, headWeights, pose, turnRadians, place, scale }
}

const ORIGIN = [0, 0, 0] as const

function restHeadWeights(asset: SubjectAsset): Float32Array {
  let weights = headWeightsOf.get(asset)
  if (!weights) {
    const count = asset.positions.length / 3
    weights = Float32Array.from({ length: count }, (_, v) => headWeightAt(asset.positions[3 * v + 1]!, asset.positions[3 * v + 2]!))
    headWeightsOf.set(asset, weights)
  }
  return weights
}

/** Rows of the rotation that takes a direction in the set to the rest frame of a part that follows the head by `weight`. */
export function toRest({ pose, turnRadians }: PosedSubject, weight: number): readonly [Vector, Vector, Vector] {
  // The posed images of the rest axes are the columns of the pose; its inverse has them as rows.
  const axes = ([[1, 0, 0], [0, 1, 0], [0, 0, 1]] as const).map((axis): Vector => {
    const turned = Float64Array.from(axis)
    turnWithHead(turned, 0, weight, pose, ORIGIN)
    const [c, s] = [cosine(turnRadians), sine(turnRadians)]
    return [turned[0]! * c - turned[1]! * s, turned[0]! * s + turned[1]! * c, turned[2]!]
  })
  return [axes[0]!, axes[1]!, axes[2]!]
}

/** A place of the head at rest as it stands in the set. */
export function headPlaceInSet({ pose, turnRadians, place, scale }: PosedSubject, rest: Vector): Vector {
  const at = Float64Array.from(rest)
  turnWithHead(at, 0, 1, pose, NECK_PIVOT)
  const [c, s] = [cosine(turnRadians), sine(turnRadians)]
  const [x, y, z] = [at[0]! * scale, at[1]! * scale, at[2]! * scale]
  return [place[0] + x * c - y * s, place[1] + x * s + y * c, place[2] + z]
}
