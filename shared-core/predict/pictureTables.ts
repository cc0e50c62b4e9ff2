import type { CameraRgb } from '../colour/triples.ts'
import type { Look } from '../plan/schema/look.ts'
import { bodyReflectance } from '../picture/bodyColour.ts'
import type { LightTable } from '../picture/compose.ts'
import type { Layer } from '../picture/layer.ts'
import { MATERIALS, mirroredShare, sheenOf, type PictureMaterial } from '../picture/material.ts'
import type { View } from '../picture/view.ts'
import type { ReflectanceSpectrum } from '../spectra/spectrum.ts'
import { reflectanceOfCloth } from '../spectra/surface/cloth.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import type { AmbientLight, FiringLight } from './areas.ts'
import { subjectReflectance } from './materials.ts'

/** The colour half of a picture: what each light makes of each material, by row of the tables. */

/** Whites, irises and pupils of nobody in particular. */
const EYE_SWATCHES = { 'eye-white': '#cfc7c0', iris: '#4d382a', pupil: '#0b0a0a' } as const

/** Reflectance of a material of the subject's below its sheen. The same object while the look's own stays. */
export function bodyOf(look: Look, material: PictureMaterial): ReflectanceSpectrum {
  return bodyReflectance(measured(look, material), mirroredShare(sheenOf(material, look.subject.skinSheen)))
}

/** Reflectance of each row: the subject's materials, then the grounds; null for a bare lit front and for what is not seen. */
export function pictureReflectances(look: Look, view: View): readonly (ReflectanceSpectrum | null)[] {
  return [
    ...MATERIALS.map((material) => bodyOf(look, material)),
    ...view.nets.map((net) => {
      if (net === null) return null
      const { swatch, transmittance } = view.ground.finder.grounds[net.ground]!
      return swatch === null ? null : reflectanceOfCloth({ swatch, transmittance })
    }),
  ]
}

function measured(look: Look, material: PictureMaterial): ReflectanceSpectrum {
  switch (material) {
    case 'eye-white':
    case 'iris':
    case 'pupil':
      return reflectanceOfSwatch(EYE_SWATCHES[material])
    case 'brow':
      return subjectReflectance(look.subject, 'hair')
    default:
      return subjectReflectance(look.subject, material)
  }
}

/** What a light's layer is multiplied by to give camera channels. */
export function lightTable(
  { palette, luminousEnergyLumenSeconds }: FiringLight, layer: Pick<Layer, 'returnedColour'>, curves: readonly (ReflectanceSpectrum | null)[], clipLuxSeconds: number,
): LightTable {
  const scale = luminousEnergyLumenSeconds / clipLuxSeconds
  const direct = new Float64Array(3 * curves.length)
  const returned = new Float64Array(3 * curves.length)
  curves.forEach((curve, row) => {
    // A bare lit front shows what it shines; what falls on it is lost beside that.
    if (curve === null) return
    const straight = palette.leg(null, curve).channels
    const back = palette.leg(layer.returnedColour.curve, curve).channels
    for (let k = 0; k < 3; k++) {
      direct[3 * row + k] = straight[k]! * scale
      returned[3 * row + k] = back[k]! * scale
    }
  })
  const exposed = (channel: number): number => channel * scale
  return {
    direct, returned,
    sheen: Float64Array.from(palette.leg(null, null).channels, exposed),
    returnedSheen: Float64Array.from(palette.leg(layer.returnedColour.curve, null).channels, exposed),
  }
}

/** Share of its light that each row lets through; 0 for all but the cloth of scrims. */
export function pictureTransmittances({ nets, ground }: View): readonly number[] {
  return [...MATERIALS.map(() => 0), ...nets.map((net) => (net === null ? 0 : ground.finder.grounds[net.ground]!.transmittance))]
}

/** Channels of each row under the room's steady light. */
export function ambientTable(
  ambient: AmbientLight, curves: readonly (ReflectanceSpectrum | null)[], transmittances: readonly number[], clipLuxSeconds: number,
): Float64Array {
  const table = new Float64Array(3 * curves.length)
  const scale = ambient.luxSeconds / clipLuxSeconds
  curves.forEach((curve, row) => {
    if (curve === null || scale === 0) return
    ambientChannels(ambient, curve, transmittances[row]!).forEach((channel, k) => { table[3 * row + k] = channel * scale })
  })
  return table
}

/** The room's steady light on one material, for each lux-second of it. It falls on both sides of a cloth, and passes from the far one. */
export function ambientChannels({ palette }: AmbientLight, curve: ReflectanceSpectrum | null, transmittance: number): CameraRgb {
  const [red, green, blue] = palette.leg(null, curve).channels
  const [redThrough, greenThrough, blueThrough] = palette.leg(null, null).channels
  return [red + transmittance * redThrough, green + transmittance * greenThrough, blue + transmittance * blueThrough]
}
