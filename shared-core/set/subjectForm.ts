import { type Vector, add } from '../arithmetic/vector.ts'
import { cosine, radiansFromDegrees, sine } from '../arithmetic/portable.ts'
import type { SceneSubject } from './scene.ts'

/** A rounded part of the body: an ellipsoid with its own axes. */
export interface Ellipsoid {
  readonly part: 'cranium' | 'face' | 'hair' | 'neck' | 'shoulders' | 'torso' | 'arm' | 'hips' | 'legs'
  readonly centre: Vector
  readonly axes: readonly [Vector, Vector, Vector]
  readonly semiAxesMetres: Vector
}

export type SubjectMaterial = 'skin' | 'lips' | 'hair' | 'cloth'

export const subjectAreaIds = [
  'nose', 'lips', 'cheek-left', 'cheek-right', 'jaw-left', 'jaw-right', 'rear-jaw-left', 'rear-jaw-right', 'neck', 'hair',
  'shoulder-left', 'shoulder-right', 'breastbone',
] as const
export type SubjectAreaId = (typeof subjectAreaIds)[number]

/** A place on the body at which light is metered. Left and right are the camera's. */
export interface SubjectArea {
  readonly id: SubjectAreaId
  readonly place: Vector
  readonly facing: Vector
  readonly material: SubjectMaterial
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

/** Chin up: about the axis from ear to ear, for a head that faces -y. */
function chinUpBy(degrees: number): Turn {
  const c = cosine(radiansFromDegrees(degrees))
  const s = sine(radiansFromDegrees(degrees))
  return ([x, y, z]) => [x, y * c + z * s, z * c - y * s]
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

interface AreaProportion {
  readonly id: SubjectAreaId
  readonly on: 'head' | 'body'
  readonly at: Vector
  /** Degrees from straight ahead towards the side, and upwards. */
  readonly side: -1 | 0 | 1
  readonly turnedDegrees: number
  readonly upDegrees: number
  readonly material: SubjectMaterial
}

/** Places a centimetre outside the rounded form, as a meter or a cheekbone stands out. */
const AREAS: readonly AreaProportion[] = [
  { id: 'nose', on: 'head', at: mm(0, -118, 1590), side: 0, turnedDegrees: 0, upDegrees: 0, material: 'skin' },
  { id: 'lips', on: 'head', at: mm(0, -98, 1538), side: 0, turnedDegrees: 0, upDegrees: 0, material: 'lips' },
  ...bothSides('cheek', 'head', mm(58, -76, 1588), 45, 0, 'skin'),
  ...bothSides('jaw', 'head', mm(72, -34, 1548), 90, 0, 'skin'),
  ...bothSides('rear-jaw', 'head', mm(72, 2, 1556), 125, 0, 'skin'),
  { id: 'neck', on: 'body', at: mm(0, -58, 1478), side: 0, turnedDegrees: 0, upDegrees: 0, material: 'skin' },
  { id: 'hair', on: 'head', at: mm(0, 26, 1758), side: 0, turnedDegrees: 0, upDegrees: 80, material: 'hair' },
  ...bothSides('shoulder', 'body', mm(150, 10, 1456), 90, 60, 'cloth'),
  { id: 'breastbone', on: 'body', at: mm(0, -118, 1330), side: 0, turnedDegrees: 0, upDegrees: 15, material: 'skin' },
]

function bothSides(
  name: 'cheek' | 'jaw' | 'rear-jaw' | 'shoulder', on: 'head' | 'body', at: Vector, turnedDegrees: number,
  upDegrees: number, material: SubjectMaterial,
): AreaProportion[] {
  return ([-1, 1] as const).map((side) => ({
    id: `${name}-${side < 0 ? 'left' : 'right'}` as const,
    on, at: [side * at[0], at[1], at[2]] as const, side, turnedDegrees, upDegrees, material,
  }))
}

/** Eyes of somebody on a chair of 0.45 m are 0.22 of the stature lower than standing (ANSUR II eye heights, medians). */
const SITTING_DROP = 0.22

/** The posed body of a subject. Left and right are the camera's even when the subject faces away. */
export function subjectForm(subject: SceneSubject): SubjectForm {
  const stature = subject.heightMetres
  const drop = subject.posture === 'sitting' ? SITTING_DROP : 0
  const bodyTurn = turnedBy(subject.turnDegrees)
  const headTurn = turnedBy(subject.headTurnDegrees)
  const chinUp = chinUpBy(subject.headTiltDegrees)
  const pivot = mm(0, 20, 1530)

  const turnHead: Turn = (v) => headTurn(chinUp(v))
  const headPlace: Turn = (v) => add(turnHead([v[0] - pivot[0], v[1] - pivot[1], v[2] - pivot[2]]), pivot)
  const inSet: Turn = (v) => {
    const [x, y, z] = bodyTurn(v)
    return [subject.xMetres + x * stature, subject.yMetres + y * stature, (z - drop) * stature]
  }
  const pose = (proportion: Proportion, onHead: boolean): Ellipsoid => {
    const turn: Turn = onHead ? (v) => bodyTurn(turnHead(v)) : bodyTurn
    return {
      part: proportion.part,
      centre: inSet(onHead ? headPlace(proportion.at) : proportion.at),
      axes: [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])],
      semiAxesMetres: [proportion.semi[0] * stature, proportion.semi[1] * stature, proportion.semi[2] * stature],
    }
  }
  const legs = subject.posture === 'sitting' ? SITTING_LEGS : STANDING_LEGS
  return {
    parts: [...HEAD.map((p) => pose(p, true)), ...[...BODY, ...legs].map((p) => pose(p, false))],
    areas: AREAS.map((area) => {
      const onHead = area.on === 'head'
      const facesAway = cosine(radiansFromDegrees(subject.turnDegrees + (onHead ? subject.headTurnDegrees : 0))) < 0
      const swap = facesAway ? -1 : 1
      const turned = radiansFromDegrees(area.turnedDegrees)
      const up = radiansFromDegrees(area.upDegrees)
      const facing: Vector = [
        swap * area.side * sine(turned) * cosine(up), -cosine(turned) * cosine(up), sine(up),
      ]
      const at: Vector = [swap * area.at[0], area.at[1], area.at[2]]
      return {
        id: area.id,
        place: inSet(onHead ? headPlace(at) : at),
        facing: bodyTurn(onHead ? turnHead(facing) : facing),
        material: area.material,
      }
    }),
    eyes: inSet(headPlace(mm(0, -80, 1620))),
  }
}
