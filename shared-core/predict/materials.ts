import type { Subject } from '../plan/schema/look.ts'
import { skinReflectance } from '../spectra/surface/skin.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import type { ReflectanceSpectrum } from '../spectra/spectrum.ts'
import type { AreaMaterial } from './prediction.ts'

/** Reflectance of what a subject is made of. The curves keep their identity while the subject's colours do. */
export function subjectReflectance(subject: Subject, material: AreaMaterial): ReflectanceSpectrum {
  switch (material) {
    case 'lips':
      return reflectanceOfSwatch(subject.lips)
    case 'hair':
      return reflectanceOfSwatch(subject.hair)
    case 'cloth':
      return reflectanceOfSwatch(subject.cloth)
    default:
      return skinReflectance({ itaDegrees: subject.skinItaDegrees, undertone: subject.skinUndertone })
  }
}
