import type { Layer } from './layer.ts'
import { MATERIALS } from './material.ts'
import type { Samples } from './samples.ts'

/** One light's colours for this exposure: camera channels, 1 is clip, for each unit of its layer. */
export interface LightTable {
  /** Three channels for each material: the subject's, then one for each ground of the samples. */
  readonly direct: Float32Array
  readonly returned: Float32Array
  /** Mirrored light carries the lamp's colour alone. */
  readonly sheen: readonly [number, number, number]
}

export interface LitLayer {
  readonly layer: Layer
  readonly table: LightTable
}

/** Row of a sample's material in the tables. */
export function rowOfGround(ground: number): number {
  return MATERIALS.length + ground
}

/**
 * The picture before the lens and the clip: camera channels by pixel, three a pixel. The sum over lights of layer times
 * colour; samples of one pixel are averaged here, in linear light, as a sensor does.
 * @param ambient channels of each material under the room's steady light, already exposed
 */
export function composeLinear(
  samples: Samples, lights: readonly LitLayer[], ambient: Float32Array, into: Float32Array,
): void {
  into.fill(0)
  const { count, pixels, shares, inner, outer, cover, ground } = samples
  for (let s = 0; s < count; s++) {
    const share = shares[s]!
    const g = ground[s]!
    const a = 3 * (g >= 0 ? MATERIALS.length + g : inner[s]!)
    const covered = g >= 0 ? 0 : cover[s]!
    const b = 3 * outer[s]!
    let red: number
    let green: number
    let blue: number
    if (covered > 0) {
      const bare = 1 - covered
      red = bare * ambient[a]! + covered * ambient[b]!
      green = bare * ambient[a + 1]! + covered * ambient[b + 1]!
      blue = bare * ambient[a + 2]! + covered * ambient[b + 2]!
      for (let l = 0; l < lights.length; l++) {
        const { layer, table } = lights[l]!
        const d = layer.direct[s]!
        const r = layer.returned[s]!
        const m = layer.sheen[s]!
        const { direct, returned, sheen } = table
        red += d * (bare * direct[a]! + covered * direct[b]!) + r * (bare * returned[a]! + covered * returned[b]!) + m * sheen[0]
        green += d * (bare * direct[a + 1]! + covered * direct[b + 1]!) + r * (bare * returned[a + 1]! + covered * returned[b + 1]!) + m * sheen[1]
        blue += d * (bare * direct[a + 2]! + covered * direct[b + 2]!) + r * (bare * returned[a + 2]! + covered * returned[b + 2]!) + m * sheen[2]
      }
    } else {
      red = ambient[a]!
      green = ambient[a + 1]!
      blue = ambient[a + 2]!
      for (let l = 0; l < lights.length; l++) {
        const { layer, table } = lights[l]!
        const d = layer.direct[s]!
        const r = layer.returned[s]!
        const m = layer.sheen[s]!
        const { direct, returned, sheen } = table
        red += d * direct[a]! + r * returned[a]! + m * sheen[0]
        green += d * direct[a + 1]! + r * returned[a + 1]! + m * sheen[1]
        blue += d * direct[a + 2]! + r * returned[a + 2]! + m * sheen[2]
      }
    }
    const at = 3 * pixels[s]!
    into[at] = into[at]! + share * red
    into[at + 1] = into[at + 1]! + share * green
    into[at + 2] = into[at + 2]! + share * blue
  }
}
