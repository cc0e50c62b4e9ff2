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
  { id: 'nose', place: [0, -0.11854, 1.58436], facing: [0.0256, -0.9909, 0.1321], material: 'skin', onHead: true },
  { id: 'lips', place: [0, -0.10543, 1.54542], facing: [0.0144, -0.998, 0.062], material: 'lips', onHead: true },
  { id: 'neck', place: [0, -0.04699, 1.474], facing: [-0.006, -0.9882, -0.1529], material: 'skin', onHead: false },
  { id: 'hair', place: [0, -0.02058, 1.74956], facing: [-0.1424, -0.0918, 0.9855], material: 'hair', onHead: true },
  { id: 'breastbone', place: [0, -0.04466, 1.39329], facing: [0.0049, -0.989, 0.1475], material: 'skin', onHead: false },
  { id: 'cheek-left', place: [-0.05235, -0.07235, 1.5908], facing: [-0.7109, -0.7032, 0.0138], material: 'skin', onHead: true },
  { id: 'cheek-right', place: [0.05239, -0.07239, 1.58854], facing: [0.7079, -0.7051, 0.0407], material: 'skin', onHead: true },
  { id: 'jaw-left', place: [-0.05297, -0.027, 1.561], facing: [-0.9851, -0.1216, -0.122], material: 'skin', onHead: true },
  { id: 'jaw-right', place: [0.05297, -0.027, 1.561], facing: [0.987, -0.1074, -0.1198], material: 'skin', onHead: true },
  { id: 'rear-jaw-left', place: [-0.05715, 0.00187, 1.56], facing: [-0.9422, 0.3257, -0.0782], material: 'skin', onHead: true },
  { id: 'rear-jaw-right', place: [0.05683, 0.00164, 1.557], facing: [0.9436, 0.2863, -0.1662], material: 'skin', onHead: true },
  { id: 'shoulder-left', place: [-0.1923, 0.0205, 1.43731], facing: [-0.4171, 0.0495, 0.9075], material: 'cloth', onHead: false },
  { id: 'shoulder-right', place: [0.1923, 0.0205, 1.43731], facing: [0.4106, 0.0355, 0.9111], material: 'cloth', onHead: false },
]
