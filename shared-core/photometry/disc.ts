/**
 * Cosine integral of a flat receptor under a uniform disc that lies wholly above its horizon, in closed form. Its two
 * parts, along the disc's axis and towards it, are Howell's entries for a parallel and a perpendicular element
 * (A Catalog of Radiation Heat Transfer Configuration Factors, section B); above the horizon they add up as a vector.
 *
 * @param radius of the disc in metres
 * @param height of the point in front of the disc's plane, > 0
 * @param offset of the point from the disc's axis, >= 0
 * @param cosToDisc cosine between the receptor's normal and the way straight to the disc's plane
 * @param cosToAxis cosine between the normal and the way straight to the axis; anything when the offset is 0
 * @returns pi times the configuration factor
 */
export function discCosineIntegral(
  radius: number, height: number, offset: number, cosToDisc: number, cosToAxis: number,
): number {
  const square = height * height + offset * offset + radius * radius
  const root = Math.sqrt(Math.max(0, square * square - 4 * offset * offset * radius * radius))
  const parallel = (root - square + 2 * radius * radius) / (2 * root)
  const perpendicular = (2 * height * offset * radius * radius) / ((square + root) * root)
  return Math.PI * Math.max(0, parallel * cosToDisc + perpendicular * cosToAxis)
}
