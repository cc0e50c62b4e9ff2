/** Guide numbers (ISO 1230:1992): f-number times distance in metres, at ISO 100 unless said otherwise. */

/** Guide number of an on-axis intensity in cd s: GN^2 = I S / C. */
export function guideNumberMetres(intensityCandelaSeconds: number, isoSpeed: number, incidentConstant: number): number {
  return Math.sqrt((intensityCandelaSeconds * isoSpeed) / incidentConstant)
}

/** On-axis intensity in cd s of a guide number at ISO 100. */
export function intensityOfGuideNumber(guideMetres: number, incidentConstant: number): number {
  return (guideMetres * guideMetres * incidentConstant) / 100
}

/** The same flash at another speed and a share (0-1] of its energy: GN sqrt(S / 100) sqrt(p). */
export function guideNumberAt(guideMetresAtIso100: number, isoSpeed: number, energyShare = 1): number {
  return guideMetresAtIso100 * Math.sqrt((isoSpeed / 100) * energyShare)
}

export function feetFromMetres(metres: number): number {
  return metres / 0.3048
}
