import type { Light } from '../schema/look.ts'
import type { Place } from '../schema/quantities.ts'
import { usualLight } from '../usual/light.ts'

/** What all lights of the demo job share. */
const usual = {
  ...usualLight,
  headId: 'head-1000',
} satisfies Partial<Light>

const openFront: Light['grid'] = { kind: 'none', openingDegrees: 40 }
const fabricGrid: Light['grid'] = { kind: 'fabric', openingDegrees: 50 }

/** A place in metres from the T: camera right, towards the backdrop, up. */
export const at = (xMetres: number, yMetres: number, zMetres: number): Place => ({ xMetres, yMetres, zMetres })

/** Between the cheeks, a hand in front of the T: where the key is taped to. */
export const face = at(0, -0.1, 1.56)

type Own = Omit<Light, keyof typeof usual | 'letter' | 'setUpOrder' | 'grid' | 'modifierId' | 'plane'> & Partial<Light>

/** A: the octa with its fabric grid, kept clear. */
export const octaKey = (own: Own): Light => ({
  ...usual, letter: 'A', setUpOrder: 3, modifierId: 'octa-100', grid: fabricGrid, plane: 'front', ...own,
})

/** B: the gridded strip that draws jaw and shoulder. */
export const stripEdge = (own: Own): Light => ({
  ...usual, letter: 'B', setUpOrder: 1, modifierId: 'strip-35x140', grid: fabricGrid, plane: 'edge', ...own,
})

/** C: the big umbrella that colours the shade side. */
export const umbrellaShade = (own: Own): Light => ({
  ...usual, letter: 'C', setUpOrder: 2, modifierId: 'umbrella-165', grid: openFront, plane: 'shadow-side', ...own,
})

/** A reflector head for whatever lies behind the subject. */
export const reflectorBehind = (own: Own & Pick<Light, 'letter' | 'setUpOrder'>): Light => ({
  ...usual, modifierId: 'reflector-65', grid: openFront, plane: 'background', ...own,
})
