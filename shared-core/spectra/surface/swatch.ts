import { boundedMemo } from '../boundedMemo.ts'
import { illuminants } from '../illuminants.ts'
import { colourMatching } from '../observer.ts'
import { responseRow } from '../responseRow.ts'
import { smoothestCurve } from '../smoothestCurve.ts'
import { linearFromHex, SRGB_WHITE_XYZ, xyzFromLinear } from '../srgb.ts'
import type { ReflectanceSpectrum } from '../spectrum.ts'

/** No paint or paper throws back more; fresh barium sulphate comes close. */
const HIGHEST_REFLECTANCE = 0.98

const underD65 = [colourMatching.x, colourMatching.y, colourMatching.z].map((matching) =>
  responseRow(illuminants.D65, matching),
)

/**
 * Reflectance of a surface that looks like `#rrggbb` (sRGB) in daylight: the smoothest curve with that colour under D65.
 * White of sRGB means a perfect white, so greys come out flat. Real pigments of one colour differ in their curves
 * (metamerism), so under a deep gel two papers of one swatch may part by a visible step: measure what matters.
 * @param hex colours whose curve would need more than 98 % get the nearest one.
 * @throws RangeError when the text is not a colour.
 */
export const reflectanceOfSwatch: (hex: string) => ReflectanceSpectrum = boundedMemo(256, (hex) => hex, (hex: string) => {
  const xyz = xyzFromLinear(linearFromHex(hex))
  const demands = underD65.map((row, k) => ({ row, target: (xyz[k] as number) / (SRGB_WHITE_XYZ[k] as number) }))
  return smoothestCurve(demands, 0, HIGHEST_REFLECTANCE).curve as ReflectanceSpectrum
})
