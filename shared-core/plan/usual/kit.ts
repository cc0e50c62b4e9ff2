import type { Gel, Head, Modifier } from '../schema/kit.ts'

/**
 * A mains studio head of the common size, as published for the class: 1000 J over nine stops in tenths, 5600 K.
 * Common practice, no source; the studio's own readings overrule it.
 */
export const usualHead: Head = {
  name: 'Head 1000',
  count: 1,
  fullEnergyJoules: 1_000,
  lowestEnergyJoules: 2,
  stepStops: 0.1,
  powerNotation: 'stops-from-full',
  efficacyLumenSecondsPerJoule: 38,
  colourTemperatureKelvin: 5_600,
  driftKelvinAtLowest: 150,
  t01SecondsAtFull: 1 / 400,
  recycleSecondsAtFull: 1,
  modellingLamp: 'led',
  modellingLampWatts: 30,
  supply: 'mains',
  flashesPerChargeAtFull: null,
  learnedStops: 0,
}

export const usualModifier: Modifier = {
  name: 'Reflector 65°',
  kind: 'reflector',
  count: 1,
  widthMetres: 0.18,
  heightMetres: 0.18,
  depthMetres: 0.15,
  diffusers: 0,
  learnedStops: 0,
}

/** A sheet of the common size, 50 × 60 cm (common practice, no source), apart from its name and its colour. */
export const usualGel: Omit<Gel, 'name' | 'source'> = {
  sheets: 0,
  batch: '',
  sheetWidthMetres: 0.5,
  sheetHeightMetres: 0.6,
  learnedStops: 0,
}
