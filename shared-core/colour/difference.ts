import { convertXyz65ToLab65, differenceCiede2000 } from 'culori/fn'
import type { Xyz } from './triples.ts'

const differenceOfLab = differenceCiede2000()

/** CIELAB against D65. */
export interface Lab {
  readonly l: number
  readonly a: number
  readonly b: number
}

/** CIELAB (D65 white 0.3127, 0.3290) of XYZ with Y = 1 for white. */
export function labOfXyz([x, y, z]: Xyz): Lab {
  const { l, a, b } = convertXyz65ToLab65({ x, y, z })
  return { l, a, b }
}

/** CIEDE2000 between two CIELAB colours, all factors 1 (Sharma, Wu, Dalal 2005). About 1 is a just visible step. */
export function labDifference2000(one: Lab, other: Lab): number {
  return differenceOfLab({ mode: 'lab65', ...one }, { mode: 'lab65', ...other })
}

/** CIEDE2000 between two colours given as XYZ (D65, Y = 1 for white). */
export function colourDifference2000(one: Xyz, other: Xyz): number {
  return labDifference2000(labOfXyz(one), labOfXyz(other))
}
