import type { Look, Piece } from '../schema/look.ts'
import { usualLook } from '../usual/look.ts'
import { powers } from './powers.ts'
import { at, face, octaKey, reflectorBehind, stripEdge, umbrellaShade } from './setUp.ts'

/** Fair skin, a hand's breadth off matt; fig lips; a pale collar that shows what a clipped channel does. */
const subject: Look['subject'] = {
  ...usualLook.subject,
  name: 'Anouk',
  skinItaDegrees: 48,
  skinUndertone: 0.2,
  hair: '#4a3122',
  lips: '#8f3f45',
  cloth: '#d8d2c6',
}

/** Stands between the strip and the lens, level with the part of the strip that its grid still shows the lens. */
const lensFlag: Piece = {
  kind: 'flag',
  label: 'Black flag 45 × 60, B off the lens',
  place: at(0.8, 0.45, 1.9),
  facingDegrees: 0,
  tiltDegrees: 0,
  widthMetres: 0.45,
  heightMetres: 0.6,
  openDegrees: 180,
  front: '#161616',
  back: '#161616',
  transmittance: 0,
}

const key = (energyJoules: number) =>
  octaKey({
    place: at(-0.75, -0.8, 2.05), aim: face, serves: 'nose', wantedStops: 0, energyJoules, sandbag: true, circuitId: 'left',
  })

const edge = (wantedStops: number, energyJoules: number) => stripEdge({
  place: at(1.05, 0.95, 1.75), aim: at(0.05, 0, 1.45), gelIds: ['apricot'], serves: 'jaw-right', wantedStops, energyJoules,
  circuitId: 'right',
})

const ground = (energyJoules: number) => reflectorBehind({
  letter: 'D', setUpOrder: 0, place: at(0, 1, 0.55), aim: at(0, 2.4, 1.55), gelIds: ['moss'], support: 'low-stand',
  serves: 'background-centre', wantedStops: -0.5, energyJoules, circuitId: 'left',
})

const duskBase: Look = {
  ...usualLook,
  subject,
  backdrop: { ...usualLook.backdrop, topMetres: 3, intent: 'glow' },
  pieces: { 'flag-b': lensFlag },
  mustReadTrue: { lips: { cleanPlatePlanned: false } },
}

export const duskDraft1: Look = {
  ...duskBase,
  name: 'Look 1, draft 1',
  order: 1,
  note: 'C from 45° in front: the violet lands on the mouth, and the lips no longer read true.',
  lights: {
    a: key(powers.duskDraft1.a),
    b: edge(-0.3, powers.duskDraft1.b),
    c: umbrellaShade({
      place: at(1.55, -1.55, 1.75), aim: face, gelIds: ['violet'], serves: 'cheek-right', wantedStops: -1.7,
      energyJoules: powers.duskDraft1.c, circuitId: 'right',
    }),
    d: ground(powers.duskDraft1.d),
  },
}

export const dusk: Look = {
  ...duskBase,
  name: 'Look 1, Dusk in an orchard',
  order: 0,
  note: 'Draft 2: C moved to the side so that the lips read true; B up half a stop. A clean plate with A alone is planned.',
  mustReadTrue: { lips: { cleanPlatePlanned: true } },
  lights: {
    a: key(powers.dusk.a),
    b: edge(0.2, powers.dusk.b),
    c: umbrellaShade({
      place: at(2, -0.25, 1.7), aim: at(0.07, -0.06, 1.55), gelIds: ['violet'], serves: 'cheek-right', wantedStops: -2,
      energyJoules: powers.dusk.c, circuitId: 'right',
    }),
    d: ground(powers.dusk.d),
  },
}

/** Full diffusion on a frame, lit from behind: the white that stands in for the first sun. */
const scrim: Piece = {
  kind: 'scrim',
  label: 'Scrim 1.8 × 1.8, full diffusion',
  place: at(0, 0.75, 1.5),
  facingDegrees: 0,
  tiltDegrees: 0,
  widthMetres: 1.8,
  heightMetres: 1.8,
  openDegrees: 180,
  front: '#f2f2f2',
  back: '#f2f2f2',
  transmittance: 0.4,
}

/** Where C stood in look 1, turned to the face. */
const shadeBoard: Piece = {
  ...scrim,
  kind: 'board',
  label: 'White board 1.2 × 2',
  place: at(2, -0.25, 1.2),
  facingDegrees: -94,
  widthMetres: 1.2,
  heightMetres: 2,
  transmittance: 0,
}

/** Crossed, one high and one low: a metre behind the cloth, straight-on reflectors would leave two hot pools. */
const behindScrim = (letter: 'B' | 'D', setUpOrder: number, xMetres: number, aimMetres: number, energyJoules: number) => reflectorBehind({
  letter, setUpOrder, place: at(xMetres, 1.75, 1.5), aim: at(-1.6 * xMetres, 0.75, aimMetres), gelIds: ['pistachio'],
  serves: 'background-centre', wantedStops: null, energyJoules, circuitId: letter === 'B' ? 'right' : 'left',
})

export const firstLight: Look = {
  ...usualLook,
  name: 'Look 2, First light',
  order: 2,
  note: 'Pistachio wraps jaw and arms while the scrim behind reads clean white. The heads of B and D go behind it.',
  subject,
  backdrop: { ...usualLook.backdrop, topMetres: 3, intent: 'clean-white' },
  lights: {
    a: key(powers.firstLight.a),
    b: behindScrim('B', 0, 0.5, 2.8, powers.firstLight.b),
    d: behindScrim('D', 1, -0.5, 0.2, powers.firstLight.d),
  },
  pieces: { scrim, 'shade-board': shadeBoard },
}
