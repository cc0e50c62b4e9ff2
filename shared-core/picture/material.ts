/** What a sample of the picture can be of. The background's materials come after these, one a ground. */
export const MATERIALS = ['skin', 'lips', 'brow', 'hair', 'cloth', 'eye-white', 'iris', 'pupil'] as const
export type PictureMaterial = (typeof MATERIALS)[number]

/** How a material's surface shines, apart from its colour. */
export interface Sheen {
  /** Square of the roughness: the width of the highlight (Walter et al. 2007, GGX). */
  readonly alpha: number
  /** Strength against the bare surface of refractive index 1.4: cloth and hair scatter most of theirs inside. */
  readonly strength: number
}

/** @param skinSheen 0 matt powder, 1 dewy */
export function sheenOf(material: PictureMaterial, skinSheen: number): Sheen {
  switch (material) {
    case 'skin':
      return { alpha: 0.36 - 0.24 * skinSheen, strength: 0.75 + 0.55 * skinSheen }
    case 'lips':
      return { alpha: 0.2 - 0.1 * skinSheen, strength: 1 }
    case 'hair':
      return { alpha: 0.16, strength: 0.9 }
    case 'brow':
      return { alpha: 0.36, strength: 0.3 }
    case 'cloth':
      return { alpha: 0.6, strength: 0.35 }
    case 'eye-white':
    case 'iris':
    case 'pupil':
      return { alpha: 0.01, strength: 1 }
  }
}
