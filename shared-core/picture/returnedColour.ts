import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import { WAVELENGTH_COUNT, type ReflectanceSpectrum } from '../spectra/spectrum.ts'
import type { LightAtPoint } from '../transport/lightAtPoint.ts'
import { strayCurve } from '../transport/strayCurve.ts'
import type { ReturnedLight } from './returned.ts'

/**
 * The one colour that all returned light of a light is drawn in: the mean of what the surfaces that return it reflect,
 * each by how much comes that way. Walls of very different colours are so mixed before they reach the picture.
 */
export interface ReturnedColour {
  /** Relative to its own mean, so that the amount carries the loss. */
  readonly curve: ReflectanceSpectrum
  /** Mean reflectance by surface id, and of what goes astray. */
  readonly means: ReadonlyMap<string, number>
  readonly strayMean: number
}

export function returnedColour(scene: Scene, lightId: string, around: ReturnedLight): ReturnedColour {
  const curves = new Map(builtSet(scene).surfaces.map(({ id, swatch }) => [id, reflectanceOfSwatch(swatch)]))
  const stray = strayCurve(scene, lightId)
  const sum = new Float64Array(WAVELENGTH_COUNT)
  const lay = (curve: Float64Array, amount: number): void => {
    for (let i = 0; i < WAVELENGTH_COUNT; i++) sum[i] = sum[i]! + amount * curve[i]!
  }
  for (const face of around.faces) {
    for (const leg of face.viaSurfaces) if (leg.by === 'reflected') lay(curves.get(leg.surfaceId)!, leg.receipt.flat)
    if (stray) lay(stray, face.cavity.flat)
  }
  const mean = meanOf(sum)
  return {
    curve: sum.map((value) => (mean > 0 ? value / mean : 1)) as ReflectanceSpectrum,
    means: new Map([...curves].map(([id, curve]) => [id, meanOf(curve)])),
    strayMean: stray ? meanOf(stray) : 0,
  }
}

/** How much returned light falls flat on a receiver, its losses counted. @param counts which surfaces to count */
export function returnedAmount(found: LightAtPoint, { means, strayMean }: ReturnedColour, counts: (surfaceId: string) => boolean): number {
  let amount = found.cavity.flat * strayMean
  for (const leg of found.viaSurfaces) {
    if (leg.by === 'reflected' && counts(leg.surfaceId)) amount += leg.receipt.flat * (means.get(leg.surfaceId) ?? 0)
  }
  return amount
}

function meanOf(curve: Float64Array): number {
  let sum = 0
  for (const value of curve) sum += value
  return sum / WAVELENGTH_COUNT
}
