import { cosine, radiansFromDegrees, sine } from '../arithmetic/portable.ts'
import type { Vector } from '../arithmetic/vector.ts'
import type { SceneSubject } from '../set/scene.ts'
import { SITTING_DROP } from '../set/subjectForm.ts'
import { STATURE_METRES } from '../subject/field/subjectField.ts'
import { headWeightAt, NECK_PIVOT, turnWithHead } from '../subject/mesh/pose.ts'

/**
 * Where a place of the surface at rest stands in the set, as `poseSubject` moves a vertex there: what is pinned to a
 * cheek rides along without the surface at hand.
 * @param rest metres of the subject's own space
 */
export function restPlaceInSet(subject: SceneSubject, rest: Vector): Vector {
  const scale = subject.heightMetres / STATURE_METRES
  const drop = subject.posture === 'sitting' ? SITTING_DROP * subject.heightMetres : 0
  const pose = { turnRadians: radiansFromDegrees(subject.headTurnDegrees), tiltRadians: radiansFromDegrees(subject.headTiltDegrees) }
  const turnRadians = radiansFromDegrees(subject.turnDegrees)
  const at = Float64Array.from(rest)
  const weight = headWeightAt(rest[1], rest[2])
  if (weight > 0) turnWithHead(at, 0, weight, pose, NECK_PIVOT)
  const [c, s] = [cosine(turnRadians), sine(turnRadians)]
  const [x, y, z] = [at[0]! * scale, at[1]! * scale, at[2]! * scale]
  return [subject.xMetres + x * c - y * s, subject.yMetres + x * s + y * c, z - drop]
}
