/** Whether a sphere at c meets the cone from the origin to a disc of `radius` at d. */
export function meetsCone(
  cx: number, cy: number, cz: number, dx: number, dy: number, dz: number, sphereRadius: number, radius: number,
): boolean {
  const lengthSquared = dx * dx + dy * dy + dz * dz
  const along = (cx * dx + cy * dy + cz * dz) / lengthSquared
  const s = along <= 0 ? 0 : along >= 1 ? 1 : along
  const x = cx - s * dx
  const y = cy - s * dy
  const z = cz - s * dz
  // The sphere may reach past its nearest point of the axis to where the cone is wider.
  const reach = sphereRadius + radius * Math.min(1, s + sphereRadius / Math.sqrt(lengthSquared))
  return x * x + y * y + z * z <= reach * reach
}
