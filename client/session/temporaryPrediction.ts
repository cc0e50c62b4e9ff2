import { namedAreas, type NamedArea } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { AreaPrediction, LightPrediction, MeterReading, Prediction } from '../../shared-core/predict/prediction.ts'

// Stands in until the core's predict can be imported; then this file goes. Its numbers mean nothing.

const reading = (stops: number): MeterReading => ({ luxSeconds: 40, fNumber: 8 * 2 ** (stops / 2), fullFNumber: 8, tenths: Math.round(stops * 10), stops })
const colours = ['#c98f6f', '#8d5f9b', '#6f8d5a', '#a8434a', '#54403a']

export function temporaryPrediction(plan: Plan, lookId: string): Prediction {
  const look = plan.looks[lookId]!
  const lights: LightPrediction[] = Object.entries(look.lights).map(([id, light], index) => ({
    id, letter: light.letter, plane: light.plane, on: light.on, summary: light.modifierId, serves: light.serves as NamedArea,
    level: reading(light.wantedStops ?? 0), wantedStops: light.wantedStops, distanceMetres: 1.4, apparentSizeDegrees: 30,
    energyJoules: light.energyJoules, stopsFromFull: Math.log2(light.energyJoules / 1000), powerText: '1/4 − 0.3', stopsInHand: 2,
    stopsAboveLowest: 5, recycleSeconds: 0.6, t01Seconds: 0.002, colourTemperatureKelvin: 5600, plusMinusStops: 0.7,
    gel: {
      clear: light.gelIds.length === 0, name: light.gelIds[0] ?? 'clear', meterLossStops: 0.7, strongestChannelLossStops: 0.1,
      whiteOutStops: 2.5, channelLossStops: [0.1, 0.9, 2.5] as never, onWhite: colours[index % 5]!, onSkin: colours[(index + 1) % 5]!, words: 'temporary',
    },
  }))
  const areas: AreaPrediction[] = namedAreas.map((id, index) => ({
    id, label: id.replaceAll('-', ' '), material: id.startsWith('background') ? 'backdrop' : 'skin', place: [0, 0, 1.5] as never,
    facing: [0, -1, 0] as never, inFrame: true, frameX: 0.2 + (index % 4) * 0.2, frameY: 0.15 + Math.floor(index / 4) * 0.17,
    meter: reading(0.4 - index * 0.2), dome: reading(0), flat: reading(0), exposureLuxSeconds: 20,
    byLight: lights.map((light) => ({ lightId: light.id, stops: -1, exposureLuxSeconds: 5, share: 1 / lights.length, channels: [0.1, 0.1, 0.1] as never })),
    colour: { channels: [0.3, 0.2, 0.1] as never, clipped: [false, false, false], xyz: [0.2, 0.2, 0.2] as never, display: colours[index % 5]!, outsideDisplay: false, words: 'temporary', spotStopsOverGrey: 0 },
  }))
  return {
    lookId, lookName: look.name, areas, lights, spills: [], snags: [], cautions: [],
    taking: { fNumber: look.camera.fNumber, isoSpeed: look.camera.isoSpeed, shutterSeconds: look.camera.shutterSeconds, whiteBalanceKelvin: look.camera.whiteBalanceKelvin, clipLuxSeconds: 100 },
    background: { behind: 'paper', spots: [], verdict: 'not-white', verdictAfterFinish: 'not-white', stopsMissing: 3, unevennessStops: 1, whitePointPullStops: null, contrastPull: null, wrap: null, haze: { frameMean: 0.1, blackLift: 0.001, blackStopsUnderGrey: -6 } },
    framing: { atSubjectWidthMetres: 0.59, atSubjectHeightMetres: 0.89, atBackdropWidthMetres: 1.27, atBackdropHeightMetres: 1.91, backdropFillsFrame: true, horizontalDegrees: 16, verticalDegrees: 24, subjectDistanceMetres: 2.1 },
    depthOfField: { nearMetres: 1.97, farMetres: 2.26, totalMetres: 0.29 },
    ambient: { lux: 0, stops: null },
  }
}
