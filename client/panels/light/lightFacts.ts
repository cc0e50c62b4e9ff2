import type { LightPrediction } from '../../../shared-core/predict/prediction.ts'
import { formatKelvin, formatShutter } from '../../../shared-core/plan/entry/camera.ts'
import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import { formatNumber } from '../../../shared-core/plan/entry/number.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import type { Units } from '../../session/board.ts'
import type { Fact } from '../Facts.tsx'
import { meterInWords } from '../meterWords.ts'

/** What a light gives as it stands, for the sheet about it. */
export function lightFacts(light: LightPrediction, units: Units): readonly Fact[] {
  const offWanted = light.wantedStops === null || light.level.stops === null ? null : light.level.stops - light.wantedStops
  return [
    { name: 'Level', value: signedStops(light.level.stops), note: meterInWords(light.level) },
    { name: 'Wanted', value: light.wantedStops === null ? 'open' : signedStops(light.wantedStops), ...(offWanted === null ? {} : { note: wantedNote(offWanted) }) },
    { name: 'In hand', value: formatNumber(light.stopsInHand, 1), note: `${formatNumber(light.stopsAboveLowest, 1)} to lowest` },
    { name: 'Front to place', value: formatLength(light.distanceMetres, units), note: `seen ${Math.round(light.apparentSizeDegrees)}° wide` },
    { name: 'Recycle', value: secondsText(light.recycleSeconds), note: `t0.1 ${formatShutter(light.t01Seconds)}` },
    { name: 'Flash', value: formatKelvin(light.colourTemperatureKelvin) },
    { name: 'Sure to', value: `± ${light.plusMinusStops.toFixed(1)}`, note: 'until metered' },
  ]
}

function wantedNote(offStops: number): string {
  return Math.abs(offStops) < 0.05 ? 'met' : `${Math.abs(offStops).toFixed(1)} ${offStops > 0 ? 'over' : 'under'}`
}

const secondsText = (seconds: number) => `${seconds < 1 ? seconds.toFixed(2) : seconds.toFixed(1)} s`
