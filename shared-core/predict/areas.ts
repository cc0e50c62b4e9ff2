import type { Look } from '../plan/schema/look.ts'
import { clipChannels } from '../colour/camera.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { displayHex } from '../colour/display.ts'
import { colourWords } from '../colour/hueWords.ts'
import type { CameraRgb } from '../colour/triples.ts'
import { SPOT_CONSTANT } from '../exposure/meter.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import type { ReflectanceSpectrum } from '../spectra/spectrum.ts'
import type { Arrival, Arrivals } from './arrivals.ts'
import type { LightPalette } from './lightPalette.ts'
import { subjectReflectance } from './materials.ts'
import type { AreaColour, AreaFromLight, AreaPrediction, Taking } from './prediction.ts'
import type { Site } from './sites.ts'
import { meterReading, receptorConstant, stopsOrNull } from './taking.ts'

/** A light as it fires: how much, and in which colour. */
export interface FiringLight {
  readonly id: string
  readonly on: boolean
  /** Of the bare tube, with what the meter has taught of this head. */
  readonly luminousEnergyLumenSeconds: number
  readonly palette: LightPalette
}

/** Steady light of the room, the same from everywhere. */
export interface AmbientLight {
  readonly luxSeconds: number
  readonly palette: LightPalette
}

/** One light's effect at a site, in lux-seconds and camera channels. */
interface Received {
  readonly flat: number
  readonly domeOut: number
  readonly domeToLight: number
  readonly reflectedLuminance: number
  readonly channels: CameraRgb
}

const NOTHING: Received = { flat: 0, domeOut: 0, domeToLight: 0, reflectedLuminance: 0, channels: [0, 0, 0] }

export function areasOf(
  look: Look, taking: Taking, arrivals: Arrivals, lights: readonly FiringLight[], ambient: AmbientLight,
): AreaPrediction[] {
  return arrivals.sites.map((site, index) => {
    const on = siteReflectance(site, look)
    const fromLights = lights.map((light) =>
      light.on ? received(arrivals.byLight.get(light.id)?.[index], light, on, taking) : NOTHING)
    const fromRoom = fromAmbient(ambient, on, site, taking)
    return areaOf(look, taking, site, lights, fromLights, fromRoom)
  })
}

/** What covers a site: null counts as a perfect white, which a bare lit front stands for. */
function siteReflectance(site: Site, look: Look): ReflectanceSpectrum | null {
  if (site.swatch !== null) return reflectanceOfSwatch(site.swatch)
  return site.material === 'front' ? null : subjectReflectance(look.subject, site.material)
}

/** Exposure at a light's own place of service, one light alone: what its level is read from. */
export function domeTowardsLight(arrival: Arrival | undefined, light: FiringLight): number {
  if (!arrival) return 0
  let luxSeconds = arrival.shines * light.palette.leg(null, null).luminance
  for (const leg of arrival.legs) luxSeconds += leg.receipt.domeToLight * light.palette.leg(leg.by, null).luminance
  return luxSeconds * light.luminousEnergyLumenSeconds
}

function received(arrival: Arrival | undefined, light: FiringLight, on: ReflectanceSpectrum | null, taking: Taking): Received {
  if (!arrival) return NOTHING
  const energy = light.luminousEnergyLumenSeconds
  let flat = 0
  let domeOut = 0
  let domeToLight = 0
  let reflectedLuminance = 0
  let red = 0
  let green = 0
  let blue = 0
  for (const { by, receipt } of arrival.legs) {
    const { luminance, reflectedLuminance: reflected, channels } = light.palette.leg(by, on)
    const fallen = receipt.flat * energy
    flat += fallen * luminance
    domeOut += receipt.domeOut * energy * luminance
    domeToLight += receipt.domeToLight * energy * luminance
    reflectedLuminance += fallen * reflected
    red += fallen * channels[0]
    green += fallen * channels[1]
    blue += fallen * channels[2]
  }
  if (arrival.shines > 0) {
    const { luminance, channels } = light.palette.leg(null, null)
    const shone = arrival.shines * energy
    flat += shone * luminance
    domeOut += shone * luminance
    domeToLight += shone * luminance
    reflectedLuminance += shone * luminance
    red += shone * channels[0]
    green += shone * channels[1]
    blue += shone * channels[2]
  }
  const perLuxSecond = 1 / taking.clipLuxSeconds
  return {
    flat, domeOut, domeToLight, reflectedLuminance,
    channels: [red * perLuxSecond, green * perLuxSecond, blue * perLuxSecond],
  }
}

function fromAmbient(ambient: AmbientLight, on: ReflectanceSpectrum | null, site: Site, taking: Taking): Received {
  // A lit front or a void does not show the room's light: its own brightness is all that counts there.
  if (ambient.luxSeconds === 0 || (site.material === 'front' && site.swatch === null)) return NOTHING
  const { reflectedLuminance, channels } = ambient.palette.leg(null, on)
  const luxSeconds = ambient.luxSeconds
  const scale = luxSeconds / taking.clipLuxSeconds
  return {
    flat: luxSeconds, domeOut: luxSeconds, domeToLight: luxSeconds,
    reflectedLuminance: reflectedLuminance * luxSeconds,
    channels: [channels[0] * scale, channels[1] * scale, channels[2] * scale],
  }
}

function areaOf(
  look: Look, taking: Taking, site: Site, lights: readonly FiringLight[], fromLights: readonly Received[], fromRoom: Received,
): AreaPrediction {
  const sum = (pick: (part: Received) => number) => fromLights.reduce((total, part) => total + pick(part), pick(fromRoom))
  const flatLuxSeconds = sum((part) => part.flat)
  const reflected = sum((part) => part.reflectedLuminance)
  const dome = meterReading(sum((part) => part.domeOut), taking, receptorConstant(look.meter, 'dome'))
  const flat = meterReading(flatLuxSeconds, taking, receptorConstant(look.meter, 'flat'))
  const byDome = look.meter.receptor === 'dome'
  const constant = receptorConstant(look.meter, look.meter.receptor)
  const channels: CameraRgb = [sum((p) => p.channels[0]), sum((p) => p.channels[1]), sum((p) => p.channels[2])]
  return {
    id: site.id,
    label: site.label,
    material: site.material,
    place: site.receiver.place,
    facing: site.receiver.facing,
    inFrame: site.inFrame,
    frameX: site.frameX,
    frameY: site.frameY,
    meter: byDome ? dome : flat,
    dome,
    flat,
    exposureLuxSeconds: flatLuxSeconds,
    byLight: fromLights.map((part, i): AreaFromLight => ({
      lightId: lights[i]!.id,
      stops: meterReading(byDome ? part.domeOut : part.flat, taking, constant).stops,
      exposureLuxSeconds: part.flat,
      share: reflected > 0 ? part.reflectedLuminance / reflected : 0,
      channels: part.channels,
    })),
    colour: areaColour(look, taking, channels, reflected),
  }
}

function areaColour(look: Look, taking: Taking, channels: CameraRgb, reflectedLuxSeconds: number): AreaColour {
  const xyz = xyzFromChannels(clipChannels(channels), taking.whiteBalanceKelvin)
  const display = displayHex(xyz, look.finish)
  // A spot meter calls a luminance-time of K N^2 / S mid-grey; as an exposure of white that is pi times as much.
  const greyLuxSeconds = (Math.PI * SPOT_CONSTANT * taking.fNumber * taking.fNumber) / taking.isoSpeed
  return {
    channels,
    clipped: [channels[0] >= 1, channels[1] >= 1, channels[2] >= 1],
    xyz,
    display: display.hex,
    outsideDisplay: display.outsideDisplay,
    words: colourWords(xyz),
    spotStopsOverGrey: stopsOrNull(reflectedLuxSeconds / greyLuxSeconds),
  }
}
