/** Colours past sRGB are shown where the display has them. */
export function displaySpace(): PredefinedColorSpace {
  return matchMedia('(color-gamut: p3)').matches ? 'display-p3' : 'srgb'
}
