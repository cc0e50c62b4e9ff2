import type { Gel, GelFamily, Head, Modifier } from '../schema/kit.ts'
import { usualGel, usualHead } from '../usual/kit.ts'

export const demoHeads = {
  'head-1000': { ...usualHead, name: 'Head 1000, nine stops', count: 5 },
  'old-head-1000': {
    ...usualHead,
    name: 'Old head 1000, five stops',
    count: 1,
    lowestEnergyJoules: 31.25,
    stepStops: 1 / 3,
    powerNotation: 'fraction',
    colourTemperatureKelvin: 5_400,
    driftKelvinAtLowest: -100,
    t01SecondsAtFull: 1 / 250,
    recycleSecondsAtFull: 1.8,
    modellingLamp: 'halogen',
    modellingLampWatts: 250,
  },
} satisfies Record<string, Head>

/** Depths are front to back, for fit: typical of each kind, common practice, no source. */
export const demoModifiers = {
  'octa-100': modifier('Octa 100', 'octa', 1, 1, 0.45, 2),
  'strip-35x140': modifier('Strip 35 × 140', 'strip', 0.35, 1.4, 0.35, 2),
  'umbrella-165': modifier('Umbrella 165, front diffusion', 'umbrella-diffused', 1.65, 1.65, 0.6, 1),
  'reflector-65': { ...modifier('Reflector 65°', 'reflector', 0.18, 0.18, 0.15, 0), count: 3 },
  'softbox-90x120': modifier('Softbox 90 × 120', 'softbox', 0.9, 1.2, 0.5, 2),
  'dish-55': modifier('Beauty dish 55', 'beauty-dish', 0.55, 0.55, 0.25, 0),
  'umbrella-105': modifier('Umbrella 105, white', 'umbrella-white', 1.05, 1.05, 0.4, 0),
  'umbrella-105-silver': modifier('Umbrella 105, silver', 'umbrella-silver', 1.05, 1.05, 0.4, 0),
  'shoot-through-110': modifier('Shoot-through 110', 'umbrella-shoot-through', 1.1, 1.1, 0.4, 0),
  snoot: modifier('Snoot', 'snoot', 0.07, 0.07, 0.25, 0),
} satisfies Record<string, Modifier>

/** The four the pictures need first, then what a well-kept drawer holds. */
export const demoGels = {
  apricot: sheet('Apricot', 'apricot', 1, 2),
  violet: sheet('Violet', 'violet', 1, 2),
  moss: sheet('Moss', 'moss', 1, 2),
  pistachio: sheet('Pistachio', 'pistachio', 1, 3),
  straw: sheet('Straw', 'straw', 1, 2),
  'pale-straw': sheet('Pale straw', 'straw', 0.5, 2),
  yellow: sheet('Yellow', 'yellow', 1, 1),
  amber: sheet('Amber', 'amber', 1, 2),
  orange: sheet('Orange', 'orange', 1, 2),
  red: sheet('Red', 'red', 1, 1),
  'pale-pink': sheet('Pale pink', 'pink', 1, 1),
  rose: sheet('Rose', 'rose', 1, 1),
  magenta: sheet('Magenta', 'magenta', 1, 1),
  lavender: sheet('Lavender', 'lavender', 1, 2),
  'deep-violet': sheet('Deep violet', 'violet', 1.6, 1),
  blue: sheet('Blue', 'blue', 1, 2),
  sky: sheet('Sky', 'sky', 1, 1),
  turquoise: sheet('Turquoise', 'turquoise', 1, 1),
  teal: sheet('Teal', 'teal', 1, 1),
  green: sheet('Green', 'green', 1, 1),
  // From 5500 K to 3200 K is 131 mired; half and quarter sheets shift half and a quarter of that.
  'full-warm': correction('Full warm', 131),
  'half-warm': correction('Half warm', 65),
  'quarter-warm': correction('Quarter warm', 33),
  'full-cool': correction('Full cool', -131),
  'half-cool': correction('Half cool', -65),
  'neutral-1': { ...usualGel, name: 'Neutral, 1 stop', source: { from: 'neutral', lossStops: 1 }, sheets: 2 },
  'neutral-2': { ...usualGel, name: 'Neutral, 2 stops', source: { from: 'neutral', lossStops: 2 }, sheets: 1 },
} satisfies Record<string, Gel>

function modifier(
  name: string, kind: Modifier['kind'], widthMetres: number, heightMetres: number, depthMetres: number, diffusers: number,
): Modifier {
  return { name, kind, count: 1, widthMetres, heightMetres, depthMetres, diffusers, learnedStops: 0 }
}

function sheet(name: string, family: GelFamily, density: number, sheets: number): Gel {
  return { ...usualGel, name, source: { from: 'family', family, density }, sheets }
}

function correction(name: string, shiftMired: number): Gel {
  return { ...usualGel, name, source: { from: 'mired', shiftMired }, sheets: 2 }
}
