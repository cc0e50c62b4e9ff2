type Field = (x: number, y: number, z: number) => number

/** Outward direction of the field at a point, by differences over `step`; [0, 0, 0] where it is flat. */
export function gradientAt(field: Field, x: number, y: number, z: number, step: number): [number, number, number] {
  const a = field(x + step, y - step, z - step)
  const b = field(x - step, y - step, z + step)
  const c = field(x - step, y + step, z - step)
  const d = field(x + step, y + step, z + step)
  return [(a - b - c + d) / (4 * step), (-a - b + c + d) / (4 * step), (-a + b - c + d) / (4 * step)]
}

/**
 * Moves vertices onto the field's zero, each no further than its share of the cell so that no facet folds over, and
 * gives the normals there. `reach` is the furthest move for a vertex.
 */
export function ontoSurface(
  positions: Float64Array, field: Field, reach: (x: number, y: number, z: number) => number, step: number,
): Float64Array {
  const normals = new Float64Array(positions.length)
  for (let v = 0; v < positions.length; v += 3) {
    const [x0, y0, z0] = [positions[v]!, positions[v + 1]!, positions[v + 2]!]
    let [x, y, z] = [x0, y0, z0]
    const limit = reach(x0, y0, z0)
    for (let round = 0; round < 3; round++) {
      const [gx, gy, gz] = gradientAt(field, x, y, z, step)
      const steep = Math.max(0.2, gx * gx + gy * gy + gz * gz)
      const move = -field(x, y, z) / steep
      x += gx * move
      y += gy * move
      z += gz * move
      const far = Math.sqrt((x - x0) * (x - x0) + (y - y0) * (y - y0) + (z - z0) * (z - z0))
      if (far > limit) {
        x = x0 + ((x - x0) * limit) / far
        y = y0 + ((y - y0) * limit) / far
        z = z0 + ((z - z0) * limit) / far
        break
      }
    }
    positions[v] = x
    positions[v + 1] = y
    positions[v + 2] = z
    const [gx, gy, gz] = gradientAt(field, x, y, z, step)
    const size = Math.sqrt(gx * gx + gy * gy + gz * gz)
    normals[v] = size > 1e-9 ? gx / size : 0
    normals[v + 1] = size > 1e-9 ? gy / size : 0
    normals[v + 2] = size > 1e-9 ? gz / size : 1
  }
  return normals
}
