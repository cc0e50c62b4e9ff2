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
  { id: 'nose', place: [0, -0.11825, 1.58331], facing: [0.0234, -0.9938, 0.1083], material: 'skin', onHead: true },
  { id: 'lips', place: [0, -0.10559, 1.54697], facing: [0.1316, -0.9893, 0.0633], material: 'lips', onHead: true },
  { id: 'neck', place: [0, -0.04465, 1.474], facing: [-0.0038, -0.9873, -0.1587], material: 'skin', onHead: false },
  { id: 'hair', place: [0, -0.0136, 1.75028], facing: [-0.1428, -0.1259, 0.9817], material: 'hair', onHead: true },
  { id: 'breastbone', place: [0, -0.04898, 1.39421], facing: [0.0047, -0.9991, 0.0413], material: 'skin', onHead: false },
  { id: 'cheek-left', place: [-0.05235, -0.07235, 1.5908], facing: [-0.7109, -0.7032, 0.0138], material: 'skin', onHead: true },
  { id: 'cheek-right', place: [0.05239, -0.07239, 1.58854], facing: [0.7079, -0.7051, 0.0407], material: 'skin', onHead: true },
  { id: 'jaw-left', place: [-0.05125, -0.033, 1.555], facing: [-0.953, -0.0556, -0.2978], material: 'skin', onHead: true },
  { id: 'jaw-right', place: [0.05125, -0.033, 1.555], facing: [0.9537, -0.071, -0.2923], material: 'skin', onHead: true },
  { id: 'rear-jaw-left', place: [-0.05318, 0.00275, 1.554], facing: [-0.8127, 0.5405, -0.2176], material: 'skin', onHead: true },
  { id: 'rear-jaw-right', place: [0.05318, 0.00275, 1.554], facing: [0.8535, 0.4671, -0.2311], material: 'skin', onHead: true },
  { id: 'shoulder-left', place: [-0.1975, 0.016, 1.43731], facing: [-0.4746, -0.0212, 0.8799], material: 'cloth', onHead: false },
  { id: 'shoulder-right', place: [0.1975, 0.016, 1.43731], facing: [0.4721, -0.057, 0.8797], material: 'cloth', onHead: false },
]
