import { SKIN_SURFACE_REFLECTANCE } from '../spectra/surface/fresnel.ts'

/** What a sample of the picture can be of. The background's materials come after these, one a ground. */
export const MATERIALS = ['skin', 'lips', 'brow', 'hair', 'cloth', 'eye-white', 'iris', 'pupil'] as const
export type PictureMaterial = (typeof MATERIALS)[number]

/** How a material's surface shines, apart from its colour. */
export interface Sheen {
  /** Square of the roughness: the width of the highlight (Walter et al. 2007, GGX). */
  readonly alpha: number
  /** Share of a bare surface of refractive index 1.4, 0-1: cloth and hair scatter most of theirs inside. */
  readonly strength: number
}

/**
 * Sheen of each material. Skin's roughness runs from powder to dewy; widths and strengths are set by eye, common
 * practice, no source.
 * @param skinSheen 0 matt powder, 1 dewy
 */
export function sheenOf(material: PictureMaterial, skinSheen: number): Sheen {
  const roughness = 0.55 - 0.23 * skinSheen
  switch (material) {
    case 'skin':
      return { alpha: roughness * roughness, strength: 0.75 + 0.25 * skinSheen }
    case 'lips':
      return { alpha: 0.7 * roughness * roughness, strength: 1 }
    case 'hair':
      return { alpha: 0.13, strength: 0.75 }
    case 'brow':
      return { alpha: 0.3, strength: 0.3 }
    case 'cloth':
      return { alpha: 0.5, strength: 0.3 }
    // Eyes mirror what they see itself, as separate rays.
    case 'eye-white':
    case 'iris':
    case 'pupil':
      return { alpha: 0.01, strength: 0 }
  }
}

/**
 * Reflectance straight ahead that is sheen and not colour: what a sphere measures of a surface holds both, and what is
 * mirrored must not be counted twice.
 */
export function mirroredShare({ strength }: Sheen): number {
  return strength * SKIN_SURFACE_REFLECTANCE
}
