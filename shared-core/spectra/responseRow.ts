import { WAVELENGTH_COUNT } from './spectrum.ts'

/** A response (of the eye or a camera) under a light, as weights that sum to 1: a perfect white gives 1. */
export function responseRow(light: Float64Array, response: Float64Array): Float64Array {
  const row = new Float64Array(WAVELENGTH_COUNT)
  let sum = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    row[i] = (light[i] as number) * (response[i] as number)
    sum += row[i] as number
  }
  return row.map((value) => value / sum)
}
