import { type Vector, add } from '../arithmetic/vector.ts'
import { cosine, radiansFromDegrees, sine } from '../arithmetic/portable.ts'
import { areaAsset, areaPlaces, PATCH_CORNERS } from '../subject/areas/areaAsset.ts'
import { subjectAreas, type SubjectAreaId } from '../subject/areas/subjectAreas.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import { STATURE_METRES } from '../subject/field/subjectField.ts'
import { headWeightAt, NECK_PIVOT, turnWithHead } from '../subject/mesh/pose.ts'
import type { OwnShadow } from './ownShadow.ts'
import type { SceneSubject } from './scene.ts'

/** A rounded part of the body: an ellipsoid with its own axes. */
export interface Ellipsoid {
  readonly part: 'cranium' | 'face' | 'hair' | 'neck' | 'shoulders' | 'torso' | 'arm' | 'hips' | 'legs'
  readonly centre: Vector
  readonly axes: readonly [Vector, Vector, Vector]
  readonly semiAxesMetres: Vector
}

export type SubjectMaterial = 'skin' | 'lips' | 'hair' | 'cloth'

/** A place on the body at which light is metered. Left and right are the camera's. */
export interface SubjectArea {
  readonly id: SubjectAreaId
  readonly place: Vector
  readonly facing: Vector
  readonly material: SubjectMaterial
  readonly ownShadow: OwnShadow
}

/** The body as the light meets it. A finer form gives the same two things: what blocks, and where the areas are. */
export interface SubjectForm {
  readonly parts: readonly Ellipsoid[]
  readonly areas: readonly SubjectArea[]
  readonly eyes: Vector
}

type Turn = (v: Vector) => Vector

/** Turned to camera right, as seen from above anticlockwise about z. */
function turnedBy(degrees: number): Turn {
  const c = cosine(radiansFromDegrees(degrees))
  const s = sine(radiansFromDegrees(degrees))
  return ([x, y, z]) => [x * c - y * s, x * s + y * c, z]
}

/**
 * Part of the body before it is posed, for a stature of 1 metre, facing -y, floor at z = 0.
 * Proportions from the ANSUR II medians (US Army 2012) with men and women about half and half: head breadth 154,
 * length 200, chin to crown 232 mm at a stature of 1740; neck circumference about 360; biacromial about 390,
 * bideltoid about 480; chest depth 250; acromion at 0.82 of the stature.
 */
interface Proportion {
  readonly part: Ellipsoid['part']
  readonly at: Vector
  readonly semi: Vector
}

const mm = (x: number, y: number, z: number): Vector => [x / 1740, y / 1740, z / 1740]

const HEAD: readonly Proportion[] = [
  { part: 'cranium', at: mm(0, 10, 1648), semi: mm(77, 95, 92) },
  { part: 'face', at: mm(0, -25, 1594), semi: mm(62, 66, 86) },
  { part: 'hair', at: mm(0, 30, 1650), semi: mm(86, 88, 98) },
]
const BODY: readonly Proportion[] = [
  { part: 'neck', at: mm(0, 12, 1490), semi: mm(58, 60, 120) },
  { part: 'shoulders', at: mm(0, 15, 1398), semi: mm(215, 85, 62) },
  { part: 'torso', at: mm(0, 15, 1160), semi: mm(175, 122, 300) },
  { part: 'arm', at: mm(-215, 25, 1210), semi: mm(48, 55, 215) },
  { part: 'arm', at: mm(215, 25, 1210), semi: mm(48, 55, 215) },
]
const STANDING_LEGS: readonly Proportion[] = [
  { part: 'hips', at: mm(0, 15, 900), semi: mm(172, 125, 150) },
  { part: 'legs', at: mm(0, 15, 430), semi: mm(150, 100, 450) },
]
const SITTING_LEGS: readonly Proportion[] = [
  { part: 'hips', at: mm(0, 15, 900), semi: mm(180, 140, 140) },
  { part: 'legs', at: mm(0, -230, 880), semi: mm(180, 290, 85) },
]

/** The own shadow of an area: that of the heaviest corner of its facet. */
const shadows = subjectAreas.map((_, area) =>
  areaAsset.selfShadow.subarray(PATCH_CORNERS * WORDS * area, (PATCH_CORNERS * area + 1) * WORDS))

/** Left and right are the camera's: on somebody who faces away they change places. */
function otherSide(id: SubjectAreaId): SubjectAreaId {
  const swapped = id.endsWith('-left') ? id.replace(/left$/, 'right') : id.replace(/right$/, 'left')
  return swapped as SubjectAreaId
}

/** Eyes of somebody on a chair of 0.45 m are 0.22 of the stature lower than standing (ANSUR II eye heights, medians). */
export const SITTING_DROP = 0.22

/** The posed body of a subject. Left and right are the camera's even when the subject faces away. */
export function subjectForm(subject: SceneSubject): SubjectForm {
  const stature = subject.heightMetres
  const drop = subject.posture === 'sitting' ? SITTING_DROP : 0
  const bodyTurn = turnedBy(subject.turnDegrees)
  const headPose = { turnRadians: radiansFromDegrees(subject.headTurnDegrees), tiltRadians: radiansFromDegrees(subject.headTiltDegrees) }
  const pivot: Vector = [NECK_PIVOT[0] / STATURE_METRES, NECK_PIVOT[1] / STATURE_METRES, NECK_PIVOT[2] / STATURE_METRES]

  /** Turned with the head by what takes part in that by `weight`: 1 for the head itself, 0 below the collar. */
  const turnHead = (v: Vector, weight: number): Vector => {
    const turned = Float64Array.from(v)
    turnWithHead(turned, 0, weight, headPose, [0, 0, 0])
    return [turned[0]!, turned[1]!, turned[2]!]
  }
  const headPlace = (v: Vector, weight: number): Vector =>
    add(turnHead([v[0] - pivot[0], v[1] - pivot[1], v[2] - pivot[2]], weight), pivot)
  const inSet: Turn = (v) => {
    const [x, y, z] = bodyTurn(v)
    return [subject.xMetres + x * stature, subject.yMetres + y * stature, (z - drop) * stature]
  }
  const pose = (proportion: Proportion, onHead: boolean): Ellipsoid => {
    const turn: Turn = onHead ? (v) => bodyTurn(turnHead(v, 1)) : bodyTurn
    return {
      part: proportion.part,
      centre: inSet(onHead ? headPlace(proportion.at, 1) : proportion.at),
      axes: [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])],
      semiAxesMetres: [proportion.semi[0] * stature, proportion.semi[1] * stature, proportion.semi[2] * stature],
    }
  }
  const legs = subject.posture === 'sitting' ? SITTING_LEGS : STANDING_LEGS
  return {
    parts: [...HEAD.map((p) => pose(p, true)), ...[...BODY, ...legs].map((p) => pose(p, false))],
    areas: subjectAreas.map((area, index): SubjectArea => {
      const [x, y, z] = areaPlaces[index]!
      const weight = headWeightAt(y, z)
      const turn: Turn = (v) => bodyTurn(turnHead(v, weight))
      const place: Vector = [x / STATURE_METRES, y / STATURE_METRES, z / STATURE_METRES]
      const facesAway = cosine(radiansFromDegrees(subject.turnDegrees + (area.onHead ? subject.headTurnDegrees : 0))) < 0
      return {
        id: facesAway ? otherSide(area.id) : area.id,
        place: inSet(headPlace(place, weight)),
        facing: turn(area.facing),
        material: area.material,
        // The rest axes as they stand now are the columns of the turn; its inverse has them as rows.
        ownShadow: { words: shadows[index]!, toRest: [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])] },
      }
    }),
    eyes: inSet(headPlace(mm(0, -80, 1620), 1)),
  }
}
