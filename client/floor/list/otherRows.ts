import { changeBackdrop, changeCamera, changeSubject } from '../../../shared-core/plan/edits/look.ts'
import { changePiece } from '../../../shared-core/plan/edits/pieces.ts'
import { changePoint } from '../../../shared-core/plan/edits/points.ts'
import type { Backdrop, Camera, Piece, Point, Subject } from '../../../shared-core/plan/schema/look.ts'
import type { NumberRow, ThingNumber } from './numbers.ts'

export interface PieceColumn {
  readonly id: string
  readonly piece: Piece
}

export interface PointColumn {
  readonly id: string
  readonly point: Point
}

const metres = (value: number, edit: ThingNumber['edit']): ThingNumber => ({ value, unit: 'metres', edit })
const degrees = (value: number, edit: ThingNumber['edit']): ThingNumber => ({ value, unit: 'degrees', edit })

const places = [
  ['xMetres', 'Right of T', 'to camera right of the T'],
  ['yMetres', 'Behind T', 'behind the T, towards the backdrop'],
  ['zMetres', 'Up', 'centre above the floor'],
] as const

export const pieceRows: readonly NumberRow<PieceColumn>[] = [
  ...places.map(([axis, label, spoken]): NumberRow<PieceColumn> => ({
    label,
    spoken,
    numberOf: ({ id, piece }) => metres(piece.place[axis], (plan, lookId, value) => changePiece(plan, lookId, id, { place: { [axis]: value } })),
  })),
  {
    label: 'Turn',
    spoken: 'faces, 0 to the camera and 90 to camera right',
    numberOf: ({ id, piece }) => degrees(piece.facingDegrees, (plan, lookId, facingDegrees) => changePiece(plan, lookId, id, { facingDegrees })),
  },
  {
    label: 'Tilt',
    spoken: 'tilt, up is positive',
    numberOf: ({ id, piece }) =>
      piece.kind === 'v-flat' ? null : degrees(piece.tiltDegrees, (plan, lookId, tiltDegrees) => changePiece(plan, lookId, id, { tiltDegrees })),
  },
  {
    label: 'Width',
    spoken: 'width of one panel',
    numberOf: ({ id, piece }) => metres(piece.widthMetres, (plan, lookId, widthMetres) => changePiece(plan, lookId, id, { widthMetres })),
  },
  {
    label: 'Height',
    spoken: 'height of one panel',
    numberOf: ({ id, piece }) => metres(piece.heightMetres, (plan, lookId, heightMetres) => changePiece(plan, lookId, id, { heightMetres })),
  },
  {
    label: 'Opened',
    spoken: 'opened between its panels',
    numberOf: ({ id, piece }) =>
      piece.kind === 'v-flat' ? degrees(piece.openDegrees, (plan, lookId, openDegrees) => changePiece(plan, lookId, id, { openDegrees })) : null,
  },
]

export const pointRows: readonly NumberRow<PointColumn>[] = [
  ...places.map(([axis, label, spoken]): NumberRow<PointColumn> => ({
    label,
    spoken,
    numberOf: ({ id, point }) => metres(point.place[axis], (plan, lookId, value) => changePoint(plan, lookId, id, { place: { [axis]: value } })),
  })),
  {
    label: 'Turn',
    spoken: 'meter faces, 0 to the camera and 90 to camera right',
    numberOf: ({ id, point }) => degrees(point.facingDegrees, (plan, lookId, facingDegrees) => changePoint(plan, lookId, id, { facingDegrees })),
  },
  {
    label: 'Tilt',
    spoken: 'tilt, up is positive',
    numberOf: ({ id, point }) => degrees(point.tiltDegrees, (plan, lookId, tiltDegrees) => changePoint(plan, lookId, id, { tiltDegrees })),
  },
]

export const cameraRows: readonly NumberRow<Camera>[] = [
  ...places.map(([axis, label, spoken]): NumberRow<Camera> => ({
    label,
    spoken,
    numberOf: (camera) => metres(camera.place[axis], (plan, lookId, value) => changeCamera(plan, lookId, { place: { [axis]: value } })),
  })),
  ...places.map(([axis, label]): NumberRow<Camera> => ({
    label: `Aim ${label.charAt(0).toLowerCase()}${label.slice(1)}`,
    spoken: `aim, ${label.charAt(0).toLowerCase()}${label.slice(1)}`,
    numberOf: (camera) => metres(camera.aim[axis], (plan, lookId, value) => changeCamera(plan, lookId, { aim: { [axis]: value } })),
  })),
]

export const subjectRows: readonly NumberRow<Subject>[] = [
  {
    label: 'Right of T',
    spoken: 'to camera right of the T',
    numberOf: (subject) => metres(subject.xMetres, (plan, lookId, xMetres) => changeSubject(plan, lookId, { xMetres })),
  },
  {
    label: 'Behind T',
    spoken: 'behind the T, towards the backdrop',
    numberOf: (subject) => metres(subject.yMetres, (plan, lookId, yMetres) => changeSubject(plan, lookId, { yMetres })),
  },
  {
    label: 'Height',
    spoken: 'standing height',
    numberOf: (subject) => metres(subject.heightMetres, (plan, lookId, heightMetres) => changeSubject(plan, lookId, { heightMetres })),
  },
  {
    label: 'Turn',
    spoken: 'body turned to camera right',
    numberOf: (subject) => degrees(subject.turnDegrees, (plan, lookId, turnDegrees) => changeSubject(plan, lookId, { turnDegrees })),
  },
  {
    label: 'Head turn',
    spoken: 'head turned from the body',
    numberOf: (subject) => degrees(subject.headTurnDegrees, (plan, lookId, headTurnDegrees) => changeSubject(plan, lookId, { headTurnDegrees })),
  },
  {
    label: 'Chin',
    spoken: 'chin up is positive',
    numberOf: (subject) => degrees(subject.headTiltDegrees, (plan, lookId, headTiltDegrees) => changeSubject(plan, lookId, { headTiltDegrees })),
  },
]

export const backdropRows: readonly NumberRow<Backdrop>[] = [
  {
    label: 'Behind T',
    spoken: 'behind the T',
    numberOf: (backdrop) => metres(backdrop.yMetres, (plan, lookId, yMetres) => changeBackdrop(plan, lookId, { yMetres })),
  },
  {
    label: 'Middle right of T',
    spoken: 'its middle to camera right of the T',
    numberOf: (backdrop) => metres(backdrop.centreXMetres, (plan, lookId, centreXMetres) => changeBackdrop(plan, lookId, { centreXMetres })),
  },
  {
    label: 'Width',
    spoken: 'width of the roll',
    numberOf: (backdrop) => metres(backdrop.widthMetres, (plan, lookId, widthMetres) => changeBackdrop(plan, lookId, { widthMetres })),
  },
  {
    label: 'Top',
    spoken: 'top above the floor',
    numberOf: (backdrop) => metres(backdrop.topMetres, (plan, lookId, topMetres) => changeBackdrop(plan, lookId, { topMetres })),
  },
]
