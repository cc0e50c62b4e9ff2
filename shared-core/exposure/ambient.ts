/** Lux-seconds that steady light leaves while the shutter is open. */
export function ambientLuxSeconds(illuminanceLux: number, shutterSeconds: number): number {
  return illuminanceLux * shutterSeconds
}
