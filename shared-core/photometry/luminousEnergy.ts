/**
 * Luminous energy of a flash, in lumen-seconds.
 *
 * @param energyJoules stored energy (one joule is one watt-second), >= 0
 * @param efficacyLumenSecondsPerJoule of the bare tube; published range 15-45 (a flash maker's note on efficiency,
 *   watt-seconds and units of measure)
 */
export function luminousEnergyLumenSeconds(energyJoules: number, efficacyLumenSecondsPerJoule: number): number {
  return energyJoules * efficacyLumenSecondsPerJoule
}
