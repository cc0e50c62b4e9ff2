/** Refractive index of moist skin's surface; measured 1.34-1.55 by layer and method. */
export const SKIN_REFRACTIVE_INDEX = 1.4

/** What skin's surface throws straight back, ((n − 1) / (n + 1))². */
export const SKIN_SURFACE_REFLECTANCE = square((SKIN_REFRACTIVE_INDEX - 1) / (SKIN_REFRACTIVE_INDEX + 1))

function square(value: number): number {
  return value * value
}

/**
 * Share of unpolarised light that a smooth surface mirrors (Fresnel). It keeps the light's colour: sheen shows the gel,
 * not the skin.
 * @param cosine of the angle between light and the surface's normal, 0-1.
 * @param refractiveIndex above 1.
 */
export function fresnelReflectance(cosine: number, refractiveIndex = SKIN_REFRACTIVE_INDEX): number {
  const c = Math.min(Math.max(cosine, 0), 1)
  const inside = Math.sqrt(1 - (1 - c * c) / (refractiveIndex * refractiveIndex))
  const across = (c - refractiveIndex * inside) / (c + refractiveIndex * inside)
  const along = (refractiveIndex * c - inside) / (refractiveIndex * c + inside)
  return (across * across + along * along) / 2
}
