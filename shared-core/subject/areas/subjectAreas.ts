import type { Vector } from '../../arithmetic/vector.ts'

export const subjectAreaIds = [
  'nose', 'lips', 'cheek-left', 'cheek-right', 'jaw-left', 'jaw-right', 'rear-jaw-left', 'rear-jaw-right', 'neck', 'hair',
  'shoulder-left', 'shoulder-right', 'breastbone',
] as const
export type SubjectAreaId = (typeof subjectAreaIds)[number]

/** A place on the body at which light is metered, at rest, in metres of the subject's own space. */
export interface SubjectArea {
  readonly id: SubjectAreaId
  readonly place: Vector
  /** Outward direction of the surface there, smoothed over 3 mm. */
  readonly facing: Vector
  readonly material: 'skin' | 'lips' | 'hair' | 'cloth'
  readonly onHead: boolean
}

/** Made by `findAreas` (findAreas.ts) from the field; left and right are the camera's when the subject faces it. */
export const subjectAreas: readonly SubjectArea[] = [
  { id: 'nose', place: [0, -0.11825, 1.58331], facing: [0, -0.9941, 0.1083], material: 'skin', onHead: true },
  { id: 'lips', place: [0, -0.10555, 1.54625], facing: [0, -0.9976, -0.0696], material: 'lips', onHead: true },
  { id: 'neck', place: [0, -0.04465, 1.474], facing: [0, -0.9873, -0.1587], material: 'skin', onHead: false },
  { id: 'hair', place: [0, -0.04727, 1.74013], facing: [-0.0343, -0.4488, 0.893], material: 'hair', onHead: true },
  { id: 'breastbone', place: [0, -0.04777, 1.39395], facing: [0, -0.9998, 0.0207], material: 'skin', onHead: false },
  { id: 'cheek-left', place: [-0.05235, -0.07235, 1.5908], facing: [-0.7055, -0.7073, 0.0437], material: 'skin', onHead: true },
  { id: 'cheek-right', place: [0.05235, -0.07235, 1.5908], facing: [0.7055, -0.7073, 0.0437], material: 'skin', onHead: true },
  { id: 'jaw-left', place: [-0.05069, -0.0305, 1.552], facing: [-0.9463, -0.1802, -0.2684], material: 'skin', onHead: true },
  { id: 'jaw-right', place: [0.05069, -0.0305, 1.552], facing: [0.9463, -0.1802, -0.2684], material: 'skin', onHead: true },
  { id: 'rear-jaw-left', place: [-0.05318, 0.00275, 1.554], facing: [-0.8346, 0.5029, -0.2248], material: 'skin', onHead: true },
  { id: 'rear-jaw-right', place: [0.05318, 0.00275, 1.554], facing: [0.8346, 0.5029, -0.2248], material: 'skin', onHead: true },
  { id: 'shoulder-left', place: [-0.19461, 0.00459, 1.41005], facing: [-0.4478, -0.3814, 0.8087], material: 'cloth', onHead: false },
  { id: 'shoulder-right', place: [0.19461, 0.00459, 1.41005], facing: [0.4478, -0.3814, 0.8087], material: 'cloth', onHead: false },
]
