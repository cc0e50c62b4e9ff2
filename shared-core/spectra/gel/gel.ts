import { timesFromStops } from '../../arithmetic/portable.ts'
import { spectrumOf, WAVELENGTH_COUNT, type TransmittanceSpectrum } from '../spectrum.ts'
import { correctionTransmittance } from './correction.ts'
import { declaredGel } from './declared.ts'
import { gelFamilyDyes, sheetOfDye, type GelFamily } from './families.ts'
import { transmittanceOfRows, type GelRow } from './rows.ts'

/** Where a sheet's curve comes from. */
export type GelRecipe =
  | { readonly from: 'family'; readonly family: GelFamily; readonly density: number }
  | { readonly from: 'mired'; readonly shiftMired: number }
  | { readonly from: 'neutral'; readonly lossStops: number }
  | { readonly from: 'rows'; readonly rows: readonly GelRow[] }
  | { readonly from: 'declared'; readonly colour: string; readonly lossStops: number }

/** Plans share unchanged objects from one snapshot to the next, so the recipe itself is the key. */
const known = new WeakMap<GelRecipe, TransmittanceSpectrum>()

/**
 * Share of light a sheet lets through at each wavelength, its surfaces included.
 * A neutral or declared sheet loses what it says; families and conversion sheets carry the loss of a clear sheet too.
 * @param recipe treated as unchangeable: the answer is remembered for the object.
 */
export function gelTransmittance(recipe: GelRecipe): TransmittanceSpectrum {
  const remembered = known.get(recipe)
  if (remembered) return remembered
  const curve = solve(recipe)
  known.set(recipe, curve)
  return curve
}

function solve(recipe: GelRecipe): TransmittanceSpectrum {
  switch (recipe.from) {
    case 'family':
      return sheetOfDye(gelFamilyDyes[recipe.family], recipe.density)
    case 'mired':
      return correctionTransmittance(recipe.shiftMired)
    case 'neutral': {
      const share = timesFromStops(-recipe.lossStops)
      return spectrumOf<TransmittanceSpectrum>(() => share)
    }
    case 'rows':
      return transmittanceOfRows(recipe.rows)
    case 'declared':
      return declaredGel(recipe).transmittance
  }
}

/** Sheets one behind another: shares multiply at each wavelength (Beer and Lambert). No sheets let everything through. */
export function stack(...sheets: readonly TransmittanceSpectrum[]): TransmittanceSpectrum {
  const out = new Float64Array(WAVELENGTH_COUNT).fill(1)
  for (const sheet of sheets) {
    for (let i = 0; i < WAVELENGTH_COUNT; i++) out[i] = (out[i] as number) * (sheet[i] as number)
  }
  return out as TransmittanceSpectrum
}
