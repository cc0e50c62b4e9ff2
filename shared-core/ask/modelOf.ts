import { timesFromStops } from '../arithmetic/portable.ts'
import { incidentLuxSeconds } from '../exposure/meter.ts'
import type { Look } from '../plan/schema/look.ts'
import type { AreaPrediction, Prediction } from '../predict/prediction.ts'
import { LookModel, type AreaParts, type Part } from './lookModel.ts'

/** A prediction taken apart by lights; all coefficients are read from it. */
export function modelOf(prediction: Prediction, meter: Look['meter']): LookModel {
  const { fNumber, isoSpeed, whiteBalanceKelvin } = prediction.taking
  const constant = meter.receptor === 'dome' ? meter.domeConstant : meter.flatConstant
  const areaUnit = incidentLuxSeconds(fNumber, isoSpeed, constant)
  const lit = prediction.lights.filter(({ on }) => on)
  const lightIds = lit.map(({ id }) => id)
  return new LookModel({
    lightIds, whiteBalanceKelvin, areaUnit,
    levelUnit: incidentLuxSeconds(fNumber, isoSpeed, meter.domeConstant),
    levels: lit.map(({ level }) => level.luxSeconds),
    areas: new Map(prediction.areas.map((area) => [area.id, partsOf(area, lightIds, areaUnit)])),
  })
}

function partsOf(area: AreaPrediction, lightIds: readonly string[], areaUnit: number): AreaParts {
  const byId = new Map(area.byLight.map((given) => [given.lightId, given]))
  const lights = lightIds.map((id): Part => {
    const given = byId.get(id)
    const stops = given?.stops ?? null
    return { luxSeconds: stops === null ? 0 : areaUnit * timesFromStops(stops), channels: given?.channels ?? [0, 0, 0] }
  })
  const rest = (k: 0 | 1 | 2): number => Math.max(0, area.colour.channels[k] - lights.reduce((sum, part) => sum + part.channels[k], 0))
  const luxSeconds = Math.max(0, area.meter.luxSeconds - lights.reduce((sum, part) => sum + part.luxSeconds, 0))
  return { label: area.label, ambient: { luxSeconds, channels: [rest(0), rest(1), rest(2)] }, lights }
}
