import type { Light } from '../../shared-core/plan/schema/look.ts'
import { planSchema, type Plan } from '../../shared-core/plan/schema/plan.ts'

// Stands in until the core's demo job can be imported; then this file goes.

const head = {
  name: 'Head 1000', count: 4, fullEnergyJoules: 1000, lowestEnergyJoules: 2, stepStops: 0.1, powerNotation: 'fraction',
  efficacyLumenSecondsPerJoule: 38, colourTemperatureKelvin: 5600, driftKelvinAtLowest: 200, t01SecondsAtFull: 0.004,
  recycleSecondsAtFull: 1.2, modellingLamp: 'led', modellingLampWatts: 20, supply: 'mains', flashesPerChargeAtFull: null,
  learnedStops: 0,
} as const

function light(part: Partial<Light> & Pick<Light, 'letter' | 'modifierId' | 'place' | 'aim' | 'energyJoules'>): Light {
  return {
    setUpOrder: part.letter.charCodeAt(0), on: true, headId: 'head', grid: { kind: 'none', openingDegrees: 40 }, rollDegrees: 0,
    gelIds: [], gelPlace: 'at-the-head', support: 'stand', plane: 'front', serves: 'nose', wantedStops: 0, note: '', ...part,
  }
}

const at = (xMetres: number, yMetres: number, zMetres: number) => ({ xMetres, yMetres, zMetres })

export const temporaryPlan: Plan = planSchema.parse({
  schemaVersion: 1,
  title: 'Late Harvest',
  brief: '',
  room: {
    name: 'Studio', widthMetres: 5.6, lengthMetres: 8.4, heightMetres: 3.2, markFromLeftWallMetres: 2.8, markFromRearWallMetres: 2.9,
    surfaces: { leftWall: '#e6e6e6', rightWall: '#e6e6e6', rearWall: '#e6e6e6', frontWall: '#e6e6e6', ceiling: '#e6e6e6', floor: '#7c7c7c' },
    columns: {}, ambientLux: 0, ambientKelvin: 4000, mainsVolts: 230, circuits: {},
  },
  team: {},
  heads: { head },
  modifiers: {
    octa: { name: 'octa 100', kind: 'octa', count: 1, widthMetres: 1, heightMetres: 1, depthMetres: 0.45, diffusers: 2 },
    strip: { name: 'strip 35×140', kind: 'strip', count: 1, widthMetres: 0.35, heightMetres: 1.4, depthMetres: 0.4, diffusers: 2 },
    umbrella: { name: 'umbrella 165', kind: 'umbrella-diffused', count: 1, widthMetres: 1.65, heightMetres: 1.65, depthMetres: 0.6, diffusers: 1 },
    reflector: { name: 'reflector 65°', kind: 'reflector', count: 2, widthMetres: 0.18, heightMetres: 0.18, depthMetres: 0.2, diffusers: 0 },
  },
  gels: {
    apricot: { name: 'apricot', source: { from: 'family', family: 'apricot', density: 1 }, sheets: 2 },
    violet: { name: 'violet', source: { from: 'family', family: 'violet', density: 1 }, sheets: 2 },
    moss: { name: 'moss', source: { from: 'family', family: 'moss', density: 1 }, sheets: 2 },
  },
  looks: {
    look1: {
      name: 'Look 1 · Dusk in an orchard', order: 1, note: '',
      camera: {
        place: at(0, -2.1, 1.42), aim: at(0, 0, 1.52), focalLengthMillimetres: 85, sensorWidthMillimetres: 24, sensorHeightMillimetres: 36,
        fNumber: 8, shutterSeconds: 1 / 160, isoSpeed: 200, whiteBalanceKelvin: 5500, syncSeconds: 1 / 200, radioTrigger: true, headroomStops: 0, veilingGlare: 0.01,
      },
      meter: { receptor: 'dome', domeConstant: 330, flatConstant: 250 },
      subject: {
        name: 'Anouk', xMetres: 0, yMetres: 0, posture: 'standing', heightMetres: 1.74, turnDegrees: 0, headTurnDegrees: 0, headTiltDegrees: 0,
        skinItaDegrees: 50, skinUndertone: 0, skinSheen: 0.3, hair: '#3b2a20', lips: '#a8434a', cloth: '#2b2b2b',
      },
      backdrop: { kind: 'paper', swatch: '#7c7c7c', yMetres: 2.4, centreXMetres: 0, widthMetres: 2.72, topMetres: 2.9, intent: 'glow' },
      lights: {
        a: light({ letter: 'A', modifierId: 'octa', place: at(-0.75, -0.8, 2.05), aim: at(0, 0, 1.55), energyJoules: 58, grid: { kind: 'fabric', openingDegrees: 110 } }),
        b: light({ letter: 'B', modifierId: 'strip', place: at(1.05, 0.95, 1.75), aim: at(0.05, 0, 1.45), energyJoules: 179, gelIds: ['apricot'], plane: 'edge', serves: 'jaw-right', wantedStops: 0.2 }),
        c: light({ letter: 'C', modifierId: 'umbrella', place: at(2, -0.25, 1.7), aim: at(0.05, 0, 1.55), energyJoules: 289, gelIds: ['violet'], plane: 'shadow-side', serves: 'cheek-right', wantedStops: -2 }),
        d: light({ letter: 'D', modifierId: 'reflector', place: at(0, 1, 0.55), aim: at(0, 2.4, 1.55), energyJoules: 23, gelIds: ['moss'], support: 'low-stand', plane: 'background', serves: 'background-centre', wantedStops: -0.5 }),
      },
      pieces: {
        flag: { kind: 'flag', label: 'flag 45×60', place: at(0.8, 0.45, 1.75), facingDegrees: 0, tiltDegrees: 0, widthMetres: 0.45, heightMetres: 0.6, openDegrees: 90, front: '#101010', back: '#101010', transmittance: 0 },
      },
      points: {},
      finish: { exposureStops: 0, contrast: 0, whitePointStops: 0, blackPoint: 0 },
    },
  },
})
