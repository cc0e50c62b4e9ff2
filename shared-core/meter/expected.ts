import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import { direction, subtract } from '../arithmetic/vector.ts'
import { luminousEnergyLumenSeconds } from '../photometry/luminousEnergy.ts'
import type { Light } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { arrivalsOfLight, type Arrival } from '../predict/arrivals.ts'
import { FiringStage, type FiredLight } from '../predict/firing.ts'
import { learnedStopsOf } from '../predict/learnedStops.ts'
import { SceneStage } from '../predict/sceneOfLook.ts'
import { sitesOf, type Site } from '../predict/sites.ts'
import { receptorConstant, takingOf, type Receptor } from '../predict/taking.ts'
import type { FiredPart, Pointed } from '../rig/readings.ts'
import type { Scene } from '../set/scene.ts'

/** How a meter is held. */
export interface Held {
  readonly areaId: string
  readonly receptor: Receptor
  readonly pointed: Pointed
}

/** What a meter held so is predicted to receive, light by light, with nothing learned from any meter. */
export interface ExpectedLight {
  readonly areaLabel: string
  /** Every light of the look that is on, in set-up order. */
  readonly parts: readonly FiredPart[]
  readonly ambientLuxSeconds: number
  readonly isoSpeed: number
  /** The meter's constant C for the receptor. */
  readonly constant: number
}

/** The expectation of a look; remembers its set, so that many meter positions of one plan cost little. */
export interface MeterModel {
  /** Null where the look has no such area. Of all lights that are on, or of these alone, to save work. */
  expect(held: Held, onlyLightIds?: readonly string[]): ExpectedLight | null
  readonly sites: readonly Site[]
}

/**
 * Prepares a look for the meter.
 * @throws RangeError when the plan has no such look
 */
export function meterModel(plan: Plan, lookId: string): MeterModel {
  const look = Object.hasOwn(plan.looks, lookId) ? plan.looks[lookId] : undefined
  if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
  const scene = new SceneStage().of(plan, look)
  const sites = sitesOf(scene, look.points)
  const firing = new FiringStage()
  const lights = firing.lights(plan, look).filter(({ light }) => light.on)
  const ambient = firing.ambient(plan, look)
  const { isoSpeed } = takingOf(look.camera)
  return {
    sites,
    expect({ areaId, receptor, pointed }, onlyLightIds) {
      const site = sites.find(({ id }) => id === areaId)
      if (!site) return null
      return {
        areaLabel: site.label,
        parts: lights.filter(({ id }) => onlyLightIds?.includes(id) ?? true).map((fired) => partOf(fired, luxSecondsOf(scene, fired, site, receptor, pointed))),
        ambientLuxSeconds: ambient.luxSeconds,
        isoSpeed,
        constant: receptorConstant(look.meter, receptor),
      }
    },
  }
}

function partOf({ id, light }: FiredLight, luxSeconds: number): FiredPart {
  const { letter, energyJoules, headId, modifierId, gelIds } = light
  return { lightId: id, letter, energyJoules, headId, modifierId, gelIds, luxSeconds }
}

function luxSecondsOf(scene: Scene, { id, light, head, firing }: FiredLight, site: Site, receptor: Receptor, pointed: Pointed): number {
  const energy = luminousEnergyLumenSeconds(light.energyJoules, head.efficacyLumenSecondsPerJoule)
  const clear = firing.palette.leg(null, null).luminance
  const facing = facingOf(scene, light, site, receptor, pointed)
  const [arrival] = arrivalsOfLight(scene, id, [{ ...site, receiver: { ...site.receiver, facing } }])
  if (!arrival) return 0
  if (pointed === 'cloth') return energy * arrival.shines * clear
  const weigh = pointed === 'light' && receptor === 'dome' ? 'domeToLight' : receptor === 'dome' ? 'domeOut' : 'flat'
  const through = received(arrival, weigh, (by) => firing.palette.leg(by, null).luminance)
  return energy * through
}

function received({ legs }: Arrival, weigh: 'flat' | 'domeOut' | 'domeToLight', luminanceBy: (by: Arrival['legs'][number]['by']) => number): number {
  return legs.reduce((sum, { by, receipt }) => sum + receipt[weigh] * luminanceBy(by), 0)
}

/** The way the receptor faces. A dome turned to its light lies on the surface as the board's own levels have it. */
function facingOf(scene: Scene, light: Light, { receiver }: Site, receptor: Receptor, pointed: Pointed): Site['receiver']['facing'] {
  const { place, facing } = receiver
  const towards = (at: Light['place']) => direction(subtract([at.xMetres, at.yMetres, at.zMetres], place), facing)
  if (pointed === 'camera') return towards(scene.camera.place)
  return pointed === 'light' && receptor === 'flat' ? towards(light.place) : facing
}

/** The lights that a reading was made under, each turned by what is believed of it, and the room's steady light. */
export function luxSecondsWith(
  { fired, ambientLuxSeconds }: { readonly fired: readonly FiredPart[]; readonly ambientLuxSeconds: number },
  correctionStops: (part: FiredPart) => number,
): number {
  return fired.reduce((sum, part) => sum + part.luxSeconds * timesFromStops(correctionStops(part)), ambientLuxSeconds)
}

/** What the plan itself corrects a light by: the learned figures of its kit. */
export function learnedInPlan(plan: Plan): (part: FiredPart) => number {
  return (part) => learnedStopsOf(plan, part)
}

/** Exposures on a scale of stops, for differences only; darkness is very far down and still a number. */
export function stopsOfLuxSeconds(luxSeconds: number): number {
  return stopsFromTimes(Math.max(luxSeconds, 1e-9))
}
