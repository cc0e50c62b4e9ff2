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
  { id: 'neck', place: [0, -0.04465, 1.474], facing: [-0.0038, -0.9873, -0.1587], material: 'skin', onHead: false },
  { id: 'hair', place: [0, -0.0136, 1.75027], facing: [-0.0872, -0.0793, 0.993], material: 'hair', onHead: true },
  { id: 'breastbone', place: [0, -0.04445, 1.39325], facing: [0.0052, -0.9844, 0.1759], material: 'skin', onHead: false },
  { id: 'cheek-left', place: [-0.05235, -0.07235, 1.5908], facing: [-0.7109, -0.7032, 0.0138], material: 'skin', onHead: true },
  { id: 'cheek-right', place: [0.05239, -0.07239, 1.58854], facing: [0.7079, -0.7051, 0.0407], material: 'skin', onHead: true },
  { id: 'jaw-left', place: [-0.05151, -0.03, 1.555], facing: [-0.9585, -0.14, -0.2485], material: 'skin', onHead: true },
  { id: 'jaw-right', place: [0.05033, -0.033, 1.552], facing: [0.9581, -0.1061, -0.2662], material: 'skin', onHead: true },
  { id: 'rear-jaw-left', place: [-0.05614, 0.00116, 1.557], facing: [-0.8593, 0.4991, -0.1117], material: 'skin', onHead: true },
  { id: 'rear-jaw-right', place: [0.05457, 0.00372, 1.557], facing: [0.849, 0.4999, -0.1709], material: 'skin', onHead: true },
  { id: 'shoulder-left', place: [-0.1923, 0.0205, 1.43731], facing: [-0.4171, 0.0495, 0.9075], material: 'cloth', onHead: false },
  { id: 'shoulder-right', place: [0.1923, 0.0205, 1.43731], facing: [0.4106, 0.0355, 0.9111], material: 'cloth', onHead: false },
]
