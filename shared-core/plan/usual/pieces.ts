import type { Piece, Point } from '../schema/look.ts'

const BLACK = '#161616'
const WHITE = '#f2f2f2'

/** What each kind usually is, until somebody measures their own. Sizes and cloths: common practice, no source. */
export const usualPieces: Readonly<Record<Piece['kind'], Omit<Piece, 'kind' | 'place'>>> = {
  flag: {
    label: 'Black flag', facingDegrees: 0, tiltDegrees: 0, widthMetres: 0.45, heightMetres: 0.6, openDegrees: 180,
    front: BLACK, back: BLACK, transmittance: 0,
  },
  'v-flat': {
    label: 'V-flat', facingDegrees: 0, tiltDegrees: 0, widthMetres: 1.2, heightMetres: 2.4, openDegrees: 90,
    front: WHITE, back: BLACK, transmittance: 0,
  },
  board: {
    label: 'White board', facingDegrees: 0, tiltDegrees: 0, widthMetres: 1, heightMetres: 2, openDegrees: 180,
    front: WHITE, back: WHITE, transmittance: 0,
  },
  scrim: {
    label: 'Scrim', facingDegrees: 0, tiltDegrees: 0, widthMetres: 1.8, heightMetres: 1.8, openDegrees: 180,
    front: WHITE, back: WHITE, transmittance: 0.4,
  },
}

/** A grey card held at the place and turned to the camera: the usual thing to meter at a point of no own surface. */
export const usualPoint: Omit<Point, 'place'> = {
  label: 'Point', facingDegrees: 0, tiltDegrees: 0, swatch: '#777777',
}
