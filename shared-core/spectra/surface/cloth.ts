import { boundedMemo } from '../boundedMemo.ts'
import type { ReflectanceSpectrum } from '../spectrum.ts'
import { reflectanceOfSwatch } from './swatch.ts'

/** A surface that may let light through: colour as `#rrggbb`, and the share that passes, 0-1. */
export interface Cloth {
  readonly swatch: string
  readonly transmittance: number
}

/**
 * Reflectance of a side that lets some of its light through: its colour holds for what it keeps, as for every other way
 * that light takes by it, so that what it returns and what it passes are never more than what it receives. The plain
 * swatch for what is solid. The curve keeps its identity while the cloth's values stay.
 * @throws RangeError when the swatch is not a colour.
 */
export function reflectanceOfCloth(cloth: Cloth): ReflectanceSpectrum {
  return cloth.transmittance === 0 ? reflectanceOfSwatch(cloth.swatch) : thinned(cloth)
}

const thinned = boundedMemo(64, ({ swatch, transmittance }: Cloth) => `${swatch} ${transmittance}`, ({ swatch, transmittance }) =>
  reflectanceOfSwatch(swatch).map((share) => share * (1 - transmittance)) as ReflectanceSpectrum)
