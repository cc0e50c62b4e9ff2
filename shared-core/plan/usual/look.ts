import type { Look } from '../schema/look.ts'

/**
 * A look before anybody has decided anything: half-length portrait, 85 mm at 2.1 m, f/8, 1/160 s, ISO 200, mid-grey
 * paper 2.4 m behind. Common practice, no source. Also what a damaged look is mended with.
 */
export const usualLook: Look = {
  name: 'Look',
  order: 0,
  note: '',
  camera: {
    place: { xMetres: 0, yMetres: -2.1, zMetres: 1.42 },
    aim: { xMetres: 0, yMetres: 0, zMetres: 1.52 },
    focalLengthMillimetres: 85,
    sensorWidthMillimetres: 24,
    sensorHeightMillimetres: 36,
    fNumber: 8,
    shutterSeconds: 1 / 160,
    isoSpeed: 200,
    whiteBalanceKelvin: 5_500,
    syncSeconds: 1 / 200,
    radioTrigger: true,
    headroomStops: 0,
    veilingGlare: 0.015,
  },
  meter: { receptor: 'dome', domeConstant: 330, flatConstant: 250 },
  subject: {
    name: '',
    xMetres: 0,
    yMetres: 0,
    posture: 'standing',
    heightMetres: 1.74,
    turnDegrees: 0,
    headTurnDegrees: 0,
    headTiltDegrees: 0,
    skinItaDegrees: 30,
    skinUndertone: 0,
    skinSheen: 0.3,
    hair: '#3a2a20',
    lips: '#a8574f',
    cloth: '#8c8c8c',
  },
  backdrop: {
    kind: 'paper',
    swatch: '#7c7c7c',
    yMetres: 2.4,
    centreXMetres: 0,
    widthMetres: 2.72,
    topMetres: 2.8,
    intent: 'free',
  },
  lights: {},
  pieces: {},
  points: {},
  finish: { exposureStops: 0, contrast: 0, whitePointStops: 0, blackPoint: 0 },
}
