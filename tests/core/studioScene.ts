import type { Scene, SceneLight, ScenePiece, ScenePlace } from '../../shared-core/set/scene.ts'

/** A plain studio with one person in it, for checks of light in the set. */

export function at(xMetres: number, yMetres: number, zMetres: number): ScenePlace {
  return { xMetres, yMetres, zMetres }
}

export const noGrid = { kind: 'none', openingDegrees: 40 } as const

export function aLight(id: string, changes: Partial<SceneLight> = {}): SceneLight {
  return {
    id,
    place: at(-0.75, -0.8, 2.05),
    aim: at(0, -0.08, 1.56),
    rollDegrees: 0,
    modifier: { kind: 'octa', widthMetres: 1, heightMetres: 1, depthMetres: 0.5, diffusers: 2 },
    grid: noGrid,
    ...changes,
  }
}

export function aPiece(id: string, changes: Partial<ScenePiece> = {}): ScenePiece {
  return {
    id, kind: 'board', place: at(1.2, 0, 1.2), facingDegrees: -90, tiltDegrees: 0, widthMetres: 1.2, heightMetres: 2.4,
    openDegrees: 90, front: '#f4f4f4', back: '#f4f4f4', transmittance: 0, ...changes,
  }
}

export const face = at(0, -0.08, 1.56)

/** Key, edge, shade and ground of a portrait on mid-grey paper, by the tape. */
export const portraitLights: readonly SceneLight[] = [
  aLight('a', { grid: { kind: 'fabric', openingDegrees: 50 } }),
  aLight('b', {
    place: at(1.05, 0.95, 1.75), aim: at(0.05, 0, 1.45),
    modifier: { kind: 'strip', widthMetres: 0.35, heightMetres: 1.4, depthMetres: 0.4, diffusers: 2 },
    grid: { kind: 'fabric', openingDegrees: 50 },
  }),
  aLight('c', {
    place: at(1.55, -1.55, 1.75), aim: face,
    modifier: { kind: 'umbrella-diffused', widthMetres: 1.65, heightMetres: 1.65, depthMetres: 0.6, diffusers: 0 },
  }),
  aLight('d', {
    place: at(0, 1, 0.55), aim: at(0, 2.4, 1.55),
    modifier: { kind: 'reflector', widthMetres: 0.18, heightMetres: 0.18, depthMetres: 0.15, diffusers: 0 },
  }),
]

export function studioScene(changes: Partial<Scene> = {}): Scene {
  return {
    lights: portraitLights,
    pieces: [],
    subject: {
      xMetres: 0, yMetres: 0, posture: 'standing', heightMetres: 1.74, turnDegrees: 0, headTurnDegrees: 0, headTiltDegrees: 0,
    },
    backdrop: { kind: 'paper', swatch: '#7c7c7c', yMetres: 2.4, centreXMetres: 0, widthMetres: 2.72, topMetres: 2.9 },
    room: {
      widthMetres: 5.6, lengthMetres: 8.4, heightMetres: 3.2, markFromLeftWallMetres: 2.8, markFromRearWallMetres: 2.9,
      surfaces: {
        leftWall: '#f0f0f0', rightWall: '#f0f0f0', rearWall: '#f0f0f0', frontWall: '#f0f0f0', ceiling: '#f0f0f0',
        floor: '#7a7a7a',
      },
      columns: {},
    },
    camera: {
      place: at(0, -2.1, 1.42), aim: at(0, 0, 1.52), focalLengthMillimetres: 85,
      sensorWidthMillimetres: 24, sensorHeightMillimetres: 36,
    },
    ...changes,
  }
}

/** The same set without a soul, far from every wall, so that only what is asked about is there. */
export function emptyScene(lights: readonly SceneLight[], pieces: readonly ScenePiece[] = []): Scene {
  const scene = studioScene({ lights, pieces })
  return {
    ...scene,
    subject: { ...scene.subject, xMetres: 20, yMetres: -20 },
    backdrop: { ...scene.backdrop, kind: 'none' },
    room: { ...scene.room, widthMetres: 60, lengthMetres: 60, heightMetres: 30, markFromLeftWallMetres: 30, markFromRearWallMetres: 30 },
  }
}

/** Where people are metered, on the standing subject of `studioScene`: a little outside the body, facing as named. */
export interface MeteredPlace {
  readonly id: string
  readonly place: readonly [number, number, number]
  readonly facing: readonly [number, number, number]
  readonly surfaceId: null
}

function metered(id: string, place: MeteredPlace['place'], aroundDegrees: number, upDegrees = 0): MeteredPlace {
  const around = (aroundDegrees * Math.PI) / 180
  const up = (upDegrees * Math.PI) / 180
  const level = Math.cos(up)
  return { id, place, facing: [level * Math.sin(around), -level * Math.cos(around), Math.sin(up)], surfaceId: null }
}

/** Camera right; the left ones are their mirror. */
const rightPlaces = [
  metered('cheek-right', [0.058, -0.076, 1.588], 45),
  metered('jaw-right', [0.072, -0.034, 1.548], 90),
  metered('rear-jaw-right', [0.066, 0.002, 1.56], 125),
  metered('shoulder-right', [0.15, 0.01, 1.456], 90, 60),
]

export const meteredPlaces: readonly MeteredPlace[] = [
  metered('nose', [0, -0.118, 1.59], 0),
  metered('lips', [0, -0.098, 1.538], 0),
  metered('neck', [0, -0.058, 1.478], 0),
  metered('hair', [0, 0.026, 1.758], 0, 80),
  metered('breastbone', [0, -0.118, 1.33], 0, 15),
  ...rightPlaces,
  ...rightPlaces.map(({ id, place, facing }): MeteredPlace => ({
    id: id.replace('right', 'left'), place: [-place[0], place[1], place[2]], facing: [-facing[0], facing[1], facing[2]],
    surfaceId: null,
  })),
]
