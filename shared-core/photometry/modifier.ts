import type { Grid } from './grid.ts'
import { lobeExponentOfBeam } from './lobe.ts'

export type ModifierKind =
  | 'bare-tube' | 'reflector' | 'snoot' | 'beauty-dish' | 'softbox' | 'octa' | 'strip'
  | 'umbrella-white' | 'umbrella-silver' | 'umbrella-diffused' | 'umbrella-shoot-through'

export interface Modifier {
  readonly kind: ModifierKind
  readonly widthMetres: number
  readonly heightMetres: number
  readonly diffusers: number
}

export type FrontShape = 'rectangle' | 'octagon' | 'disc' | 'sphere'

/** How light leaves a modifier: everything photometry has to know about it. */
export interface Front {
  readonly shape: FrontShape
  /** Discs and octagons take the width as their diameter across the flats. */
  readonly widthMetres: number
  readonly heightMetres: number
  /** Share of the bare tube's flux that leaves the front, before any grid. */
  readonly fluxShare: number
  /** Share that leaves backwards, as from the outside of a translucent umbrella. */
  readonly backFluxShare: number
  /** Radiance of each point of the front goes as cos^n. */
  readonly lobeExponent: number
  readonly grid: Grid
}

/** Share of flux and lobe of each kind, by layers of diffusion. */
interface Output {
  readonly fluxShare: number
  readonly backFluxShare?: number
  readonly lobeExponent: number
}

/** A box bare, with one layer of diffusion and with two: each layer eats light and scatters what it leaves. */
function boxWith(bareShare: number, singleShare: number, doubleShare: number): readonly Output[] {
  return [
    { fluxShare: bareShare, lobeExponent: 1.5 },
    { fluxShare: singleShare, lobeExponent: 0.5 },
    { fluxShare: doubleShare, lobeExponent: 0 },
  ]
}

/**
 * | figure | range | meaning |
 * |---|---|---|
 * | fluxShare | 0-1 | share of the bare tube's luminous energy |
 * | lobeExponent | n >= 0 | radiance goes as cos^n; 0 for a perfect diffuser |
 *
 * Set so that 1000 Ws at 38 lm s/Ws, ISO 100 and 2 m give what users read (bare tube about f/16, a 60 degree reflector
 * about f/45, a 90 x 120 box with two diffusers f/16 and 2 tenths, a 165 cm umbrella with front diffusion f/11 and
 * 8 tenths), and the losses between kinds that photographers expect. Common practice, no source: heads and makes
 * differ by two thirds of a stop, and a reading overrules all of it.
 */
const OUTPUT: Record<ModifierKind, readonly Output[]> = {
  'bare-tube': [{ fluxShare: 1, lobeExponent: 0 }],
  // The width at half peak is that of the intensity, which carries one more cosine than the radiance.
  reflector: [{ fluxShare: 0.77, lobeExponent: lobeExponentOfBeam(60) - 1 }],
  snoot: [{ fluxShare: 0.08, lobeExponent: 19 }],
  // The deflector over the tube is not drawn as a dark centre: at the distances of use only its loss matters.
  'beauty-dish': [{ fluxShare: 0.55, lobeExponent: 1.5 }, { fluxShare: 0.5, lobeExponent: 0.2 }],
  softbox: boxWith(0.52, 0.44, 0.35),
  octa: boxWith(0.52, 0.44, 0.35),
  strip: boxWith(0.49, 0.41, 0.33),
  'umbrella-white': [{ fluxShare: 0.45, backFluxShare: 0.04, lobeExponent: 0.3 }],
  'umbrella-silver': [{ fluxShare: 0.55, lobeExponent: 0.8 }],
  'umbrella-diffused': [{ fluxShare: 0.285, backFluxShare: 0.04, lobeExponent: 0 }],
  'umbrella-shoot-through': [{ fluxShare: 0.36, backFluxShare: 0.34, lobeExponent: 0 }],
}

const SHAPE: Record<ModifierKind, FrontShape> = {
  'bare-tube': 'sphere',
  reflector: 'disc',
  snoot: 'disc',
  'beauty-dish': 'disc',
  softbox: 'rectangle',
  octa: 'octagon',
  strip: 'rectangle',
  'umbrella-white': 'disc',
  'umbrella-silver': 'disc',
  'umbrella-diffused': 'disc',
  'umbrella-shoot-through': 'disc',
}

/**
 * The front of a modifier: an area that emits.
 *
 * @param modifier sizes in metres; `diffusers` past what the kind can hold count as its most
 * @param grid a grid means nothing on a bare tube and is left out there
 */
export function frontOf(modifier: Modifier, grid: Grid): Front {
  const layers = OUTPUT[modifier.kind]
  const output = layers[Math.min(modifier.diffusers, layers.length - 1)]!
  const shape = SHAPE[modifier.kind]
  return {
    shape,
    widthMetres: modifier.widthMetres,
    heightMetres: shape === 'rectangle' ? modifier.heightMetres : modifier.widthMetres,
    fluxShare: output.fluxShare,
    backFluxShare: output.backFluxShare ?? 0,
    lobeExponent: output.lobeExponent,
    grid: shape === 'sphere' ? { kind: 'none', openingDegrees: 120 } : grid,
  }
}
