import { clipChannels } from '../../shared-core/colour/camera.ts'
import { xyzFromChannels } from '../../shared-core/colour/cameraMatrix.ts'
import { colourDifference2000 } from '../../shared-core/colour/difference.ts'
import { intoGamut } from '../../shared-core/colour/display.ts'
import { applyFinish } from '../../shared-core/colour/finish.ts'
import type { CameraRgb, LinearSrgb } from '../../shared-core/colour/triples.ts'
import type { Light } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor, type Predictor } from '../../shared-core/predict/predict.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import { encodedFromLinear, linearFromEncoded, linearFromXyz, xyzFromLinear } from '../../shared-core/spectra/srgb.ts'
import type { SeenArea } from '../../shared-core/testFrame/fit.ts'
import type { TestFrameModel } from '../../shared-core/testFrame/model.ts'

/** What was done to a set, and by what key the model should name it. */
export interface Fault {
  readonly key: string
  readonly lights: Readonly<Record<string, Partial<Light>>>
}

export const asPlanned: Fault = { key: 'nothing', lights: {} }

/** A gel missing, a head a stop down, a light swapped with another: each of every light that has one, in a fixed order. */
export function faultsOf(plan: Plan, lookId: string): { readonly gels: Fault[]; readonly powers: Fault[]; readonly swaps: Fault[] } {
  const lights = Object.entries(plan.looks[lookId]!.lights).filter(([, { on }]) => on)
  const gels = lights.filter(([, { gelIds }]) => gelIds.length === 1)
    .map(([id, { gelIds }]): Fault => ({ key: `gel-missing:${id}:${gelIds[0]}`, lights: { [id]: { gelIds: [] } } }))
  const powers = lights.map(([id, { energyJoules }]): Fault => ({ key: `power:${id}`, lights: { [id]: { energyJoules: energyJoules / 2 } } }))
  const swaps = lights.flatMap(([one, first], i) => lights.slice(i + 1).flatMap(([other, second]): Fault[] => [
    ...(first.gelIds.join() === second.gelIds.join() ? [] : [
      { key: `gels-swapped ${one} ${other}`, lights: { [one]: { gelIds: second.gelIds }, [other]: { gelIds: first.gelIds } } }]),
    { key: `powers-swapped ${one} ${other}`, lights: { [one]: { energyJoules: second.energyJoules }, [other]: { energyJoules: first.energyJoules } } },
    { key: `places-swapped ${one} ${other}`, lights: { [one]: { place: second.place, aim: second.aim }, [other]: { place: first.place, aim: first.aim } } },
  ]))
  return { gels, powers, swaps }
}

/** A look rigged by hand: every stand up to 3 cm off on each axis. */
export function riggedByHand(plan: Plan, lookId: string, random: () => number): Plan {
  const look = plan.looks[lookId]!
  const off = () => 0.06 * random() - 0.03
  const lights = Object.fromEntries(Object.entries(look.lights).map(([id, light]) => [id, {
    ...light, place: { xMetres: light.place.xMetres + off(), yMetres: light.place.yMetres + off(), zMetres: light.place.zMetres + off() },
  }]))
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights } } }
}

/** Sets that were rigged, each with a predictor of its own that remembers its geometry. */
export interface Rigged {
  readonly plan: Plan
  readonly predictor: Predictor
}

export function riggings(plan: Plan, lookId: string, count: number, random: () => number): Rigged[] {
  return Array.from({ length: count }, () => ({ plan: riggedByHand(plan, lookId, random), predictor: createPredictor() }))
}

export function withFault({ plan }: Rigged, lookId: string, fault: Fault): Plan {
  const look = plan.looks[lookId]!
  const lights = { ...look.lights }
  for (const [id, change] of Object.entries(fault.lights)) lights[id] = { ...look.lights[id]!, ...change }
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights } } }
}

/** A converter's S-curve on encoded values, and a little lift: not the curve that the fit assumes. */
export function pictureStyle(curve: number, lift: number): (linear: number) => number {
  return (linear) => {
    const encoded = encodedFromLinear(Math.min(Math.max(linear, 0), 1)) ** (1 / (1 + lift))
    return linearFromEncoded((1 - curve) * encoded + curve * encoded * encoded * (3 - 2 * encoded))
  }
}

/**
 * The areas of a photograph of a set: powers up to a tenth of a stop off, the lens's stray light, a picture style, one per
 * cent of noise, eight bits.
 */
export function shotOf(model: TestFrameModel, prediction: Prediction, plan: Plan, random: () => number): SeenArea[] {
  const look = plan.looks[model.lookId]!
  const times = new Map(Object.keys(look.lights).map((id) => [id, 2 ** (0.2 * random() - 0.1)]))
  const style = pictureStyle(0.35 * random(), 0.2 * random() - 0.1)
  const { veil } = prediction.background.haze
  return model.areas.flatMap(({ id }, index): SeenArea[] => {
    const area = prediction.areas.find((one) => one.id === id)
    // The head hides the middle of the background.
    if (!area || id === 'background-centre') return []
    const channels = [0, 1, 2].map((k) => {
      const changed = area.byLight.reduce((sum, one) => sum + (times.get(one.lightId)! - 1) * one.channels[k]!, 0)
      return (area.colour.channels[k]! + changed + veil[k]!) * (1 + 0.02 * (random() - 0.5))
    }) as unknown as CameraRgb
    const linear = intoGamut(applyFinish(linearFromXyz(xyzFromChannels(clipChannels(channels), model.whiteBalanceKelvin)), look.finish))
    return [{ index, linear: linear.map((value) => linearFromEncoded(Math.round(255 * encodedFromLinear(style(value))) / 255)) as unknown as LinearSrgb }]
  })
}

/** How much a fault shows: the second largest CIEDE2000 over the areas, so that one odd place alone is none. */
export function showsBy(clean: readonly SeenArea[], faulty: readonly SeenArea[]): number {
  const each = clean.flatMap(({ index, linear }) => {
    const other = faulty.find((one) => one.index === index)
    return other ? [colourDifference2000(xyzFromLinear(linear), xyzFromLinear(other.linear))] : []
  })
  return each.sort((a, b) => b - a)[1] ?? 0
}
