import type { Look } from '../plan/schema/look.ts'
import { clipChannels } from '../colour/camera.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { displayHex } from '../colour/display.ts'
import { colourWords } from '../colour/hueWords.ts'
import type { CameraRgb } from '../colour/triples.ts'
import type { LightTable } from '../picture/compose.ts'
import type { PictureMaterial } from '../picture/material.ts'
import { spotWeights, weighed } from '../picture/spotReading.ts'
import { reflectanceOfCloth } from '../spectra/surface/cloth.ts'
import type { ReflectanceSpectrum } from '../spectra/spectrum.ts'
import type { AreaLayer } from './areaLayers.ts'
import type { Arrival, Arrivals } from './arrivals.ts'
import type { LightPalette } from './lightPalette.ts'
import { ambientChannels, bodyOf, lightTable } from './pictureTables.ts'
import type { AreaColour, AreaFromLight, AreaPrediction, Taking } from './prediction.ts'
import type { Site } from './sites.ts'
import { meterReading, receptorConstant, stopsOrNull } from './taking.ts'

/** A light as it fires: how much, and in which colour. */
export interface FiringLight {
  readonly id: string
  readonly on: boolean
  /** Of the bare tube, with what the meter has taught of head, modifier and sheets. */
  readonly luminousEnergyLumenSeconds: number
  readonly palette: LightPalette
}

/** Steady light of the room, the same from everywhere. */
export interface AmbientLight {
  readonly luxSeconds: number
  readonly palette: LightPalette
}

/** One light's effect at a site: what a meter held there receives, in lux-seconds, and what the camera sees of it. */
interface Received {
  readonly flat: number
  readonly domeOut: number
  readonly channels: CameraRgb
}

const NOTHING: Received = { flat: 0, domeOut: 0, channels: [0, 0, 0] }
const SUBJECT_MATERIALS: readonly string[] = ['skin', 'lips', 'hair', 'cloth'] satisfies PictureMaterial[]

/**
 * @param layers the picture's own light on the subject's areas: their colours and what falls on them come from there, so
 *   that picture and numbers are one. All else is read from its arrivals.
 */
export function areasOf(
  look: Look, taking: Taking, arrivals: Arrivals, layers: ReadonlyMap<string, AreaLayer>,
  lights: readonly FiringLight[], ambient: AmbientLight,
): AreaPrediction[] {
  const bodies = SUBJECT_MATERIALS.map((material) => bodyOf(look, material as PictureMaterial))
  const subject = lights.map((light) => {
    const layer = light.on ? layers.get(light.id) : undefined
    return layer ? { layer, table: lightTable(light, layer, bodies, taking.clipLuxSeconds) } : null
  })
  return arrivals.sites.map((site, index) => {
    const row = SUBJECT_MATERIALS.indexOf(site.material)
    const on = row < 0 ? siteReflectance(site) : bodies[row]!
    const fromLights = lights.map((light, i) => {
      const arrival = arrivals.byLight.get(light.id)?.[index]
      if (!light.on || !arrival) return NOTHING
      return row < 0 ? received(arrival, light, on, taking) : receivedOnSubject(arrival, light, subject[i]!, index, row)
    })
    return areaOf(look, taking, site, lights, fromLights, fromAmbient(ambient, on, site, taking))
  })
}

/** What covers a site that is not of the subject: null counts as a perfect white, which a bare lit front stands for. */
function siteReflectance({ swatch, transmittance }: Site): ReflectanceSpectrum | null {
  return swatch === null ? null : reflectanceOfCloth({ swatch, transmittance })
}

/** Exposure at a light's own place of service, one light alone: what its level is read from. */
export function domeTowardsLight(arrival: Arrival | undefined, light: FiringLight): number {
  if (!arrival) return 0
  let luxSeconds = arrival.shines * light.palette.leg(null, null).luminance
  for (const leg of arrival.legs) luxSeconds += leg.receipt.domeToLight * light.palette.leg(leg.by, null).luminance
  return luxSeconds * light.luminousEnergyLumenSeconds
}

/** As picture/compose colours a corner of the surface. */
function receivedOnSubject(
  { legs }: Arrival, { palette, luminousEnergyLumenSeconds: energy }: FiringLight,
  { layer: { areas, returnedColour }, table }: { readonly layer: AreaLayer, readonly table: LightTable }, area: number, row: number,
): Received {
  const { direct, returned, directInside, returnedInside, sheen } = areas[area]!
  const channel = (k: number): number =>
    directInside * table.direct[3 * row + k]! + returnedInside * table.returned[3 * row + k]! +
    sheen * table.sheen[k]! + (returned - returnedInside) * table.returnedSheen[k]!
  let domeOut = 0
  for (const { by, receipt } of legs) domeOut += receipt.domeOut * palette.leg(by, null).luminance
  return {
    flat: energy * (direct * palette.leg(null, null).luminance + returned * palette.leg(returnedColour.curve, null).luminance),
    domeOut: energy * domeOut,
    channels: [channel(0), channel(1), channel(2)],
  }
}

function received(arrival: Arrival, light: FiringLight, on: ReflectanceSpectrum | null, taking: Taking): Received {
  const energy = light.luminousEnergyLumenSeconds
  let flat = 0
  let domeOut = 0
  let red = 0
  let green = 0
  let blue = 0
  for (const { by, receipt } of arrival.legs) {
    const { luminance, channels } = light.palette.leg(by, on)
    const fallen = receipt.flat * energy
    flat += fallen * luminance
    domeOut += receipt.domeOut * energy * luminance
    red += fallen * channels[0]
    green += fallen * channels[1]
    blue += fallen * channels[2]
  }
  if (arrival.shines > 0) {
    const { luminance, channels } = light.palette.leg(null, null)
    const shone = arrival.shines * energy
    flat += shone * luminance
    domeOut += shone * luminance
    red += shone * channels[0]
    green += shone * channels[1]
    blue += shone * channels[2]
  }
  const perLuxSecond = 1 / taking.clipLuxSeconds
  return { flat, domeOut, channels: [red * perLuxSecond, green * perLuxSecond, blue * perLuxSecond] }
}

function fromAmbient(ambient: AmbientLight, on: ReflectanceSpectrum | null, site: Site, taking: Taking): Received {
  // A lit front or a void does not show the room's light: its own brightness is all that counts there.
  if (ambient.luxSeconds === 0 || (site.material === 'front' && site.swatch === null)) return NOTHING
  const channels = ambientChannels(ambient, on, site.transmittance)
  const luxSeconds = ambient.luxSeconds
  const scale = luxSeconds / taking.clipLuxSeconds
  return { flat: luxSeconds, domeOut: luxSeconds, channels: [channels[0] * scale, channels[1] * scale, channels[2] * scale] }
}

function areaOf(
  look: Look, taking: Taking, site: Site, lights: readonly FiringLight[], fromLights: readonly Received[], fromRoom: Received,
): AreaPrediction {
  const sum = (pick: (part: Received) => number) => fromLights.reduce((total, part) => total + pick(part), pick(fromRoom))
  const flatLuxSeconds = sum((part) => part.flat)
  const dome = meterReading(sum((part) => part.domeOut), taking, receptorConstant(look.meter, 'dome'))
  const flat = meterReading(flatLuxSeconds, taking, receptorConstant(look.meter, 'flat'))
  const byDome = look.meter.receptor === 'dome'
  const constant = receptorConstant(look.meter, look.meter.receptor)
  const channels: CameraRgb = [sum((p) => p.channels[0]), sum((p) => p.channels[1]), sum((p) => p.channels[2])]
  const spot = spotWeights(look.camera)
  const whole = weighed(spot, channels[0], channels[1], channels[2])
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
      share: whole > 0 ? weighed(spot, part.channels[0], part.channels[1], part.channels[2]) / whole : 0,
      channels: part.channels,
    })),
    colour: areaColour(look, taking, channels, whole),
  }
}

function areaColour(look: Look, taking: Taking, channels: CameraRgb, timesGrey: number): AreaColour {
  const xyz = xyzFromChannels(clipChannels(channels), taking.whiteBalanceKelvin)
  const display = displayHex(xyz, look.finish)
  return {
    channels,
    clipped: [channels[0] >= 1, channels[1] >= 1, channels[2] >= 1],
    xyz,
    display: display.hex,
    outsideDisplay: display.outsideDisplay,
    words: colourWords(xyz),
    spotStopsOverGrey: stopsOrNull(timesGrey),
  }
}
