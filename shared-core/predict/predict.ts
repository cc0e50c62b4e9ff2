import { whiteBalanceGains } from '../colour/camera.ts'
import { circleOfConfusionMillimetres, depthOfField } from '../exposure/depthOfField.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { builtSet } from '../set/builtSet.ts'
import { anglesOfView, frameSizeAt } from '../set/camera.ts'
import type { Scene } from '../set/scene.ts'
import { AreaLayers } from './areaLayers.ts'
import { areasOf, domeTowardsLight, type AmbientLight } from './areas.ts'
import { arrivalsOf, type Arrivals } from './arrivals.ts'
import { backgroundPrediction } from './background.ts'
import { FiringStage } from './firing.ts'
import { fitOf, type Fit } from './fit.ts'
import { gelPrediction } from './gelPrediction.ts'
import { lightPrediction } from './lights.ts'
import { subjectReflectance } from './materials.ts'
import type {
  AmbientPrediction, BackgroundPrediction, DepthOfField, Framing, GelPrediction, LightPrediction, Prediction, Taking,
} from './prediction.ts'
import { review } from './review.ts'
import { SceneStage } from './sceneOfLook.ts'
import { spillsOf } from './spills.ts'
import { Stage, StagesByKey } from './stage.ts'
import { subjectShareOf } from './subjectShare.ts'
import { meterReading, receptorConstant, takingOf } from './taking.ts'

export type Predictor = (plan: Plan, lookId: string) => Prediction

/**
 * Predicts one look from the plan alone.
 * @throws RangeError when the plan has no such look.
 */
export function predict(plan: Plan, lookId: string): Prediction {
  return createPredictor()(plan, lookId)
}

/**
 * A `predict` that remembers its stages between calls, so that a changed power does not move a single ray and a moved
 * light does not mix a single colour. Its results are those of `predict`, bit for bit.
 */
export function createPredictor(): Predictor {
  const stages = {
    scene: new SceneStage(),
    arrivals: new Stage<Arrivals>(),
    areaLayers: new AreaLayers(),
    subjectShare: new Stage<number>(),
    fit: new Stage<Fit>(),
    firing: new FiringStage(),
    gels: new StagesByKey<GelPrediction>(),
  }

  return (plan, lookId) => {
    const look = Object.hasOwn(plan.looks, lookId) ? plan.looks[lookId] : undefined
    if (!look) throw new RangeError(`The plan has no look called ${lookId}`)

    const scene = stages.scene.of(plan, look)
    const arrivals = stages.arrivals.of([scene, look.points], () => arrivalsOf(scene, look.points))
    const fit = stages.fit.of([scene], () => fitOf(scene))
    const taking = takingOf(look.camera)
    const gains = whiteBalanceGains(look.camera.whiteBalanceKelvin)
    const skin = subjectReflectance(look.subject, 'skin')

    const fired = stages.firing.lights(plan, look)
    const ambient = stages.firing.ambient(plan, look)
    const areas = areasOf(look, taking, arrivals, stages.areaLayers.of(scene, look.subject.skinSheen), fired.map(({ firing }) => firing), ambient)

    const domeConstant = receptorConstant(look.meter, 'dome')
    const lights = fired.map(({ firing, ...parts }): LightPrediction => {
      const siteIndex = Math.max(0, arrivals.sites.findIndex((site) => site.id === parts.light.serves))
      const names = parts.light.gelIds.flatMap((gelId) => plan.gels[gelId]?.name ?? [])
      const gel = stages.gels.of(parts.id, [parts.colour, plan.gels, look.camera.whiteBalanceKelvin, skin], () =>
        gelPrediction(parts.colour, names, gains, look.camera.whiteBalanceKelvin, skin))
      const luxSeconds = domeTowardsLight(arrivals.byLight.get(parts.id)?.[siteIndex], firing)
      return lightPrediction({ ...parts, gel, serves: arrivals.sites[siteIndex]!, level: meterReading(luxSeconds, taking, domeConstant) })
    })

    const measured = {
      lookId,
      lookName: look.name,
      taking,
      areas,
      lights,
      background: backgroundPrediction({
        look, taking, areas, lights,
        behind: behindOf(scene, fit),
        subjectShare: stages.subjectShare.of([scene.subject, scene.camera], () => subjectShareOf(scene)),
      }),
      spills: spillsOf(areas, lights),
      framing: framingOf(scene, fit),
      depthOfField: depthOf(look, taking, scene),
      ambient: ambientOf(plan, taking, ambient, domeConstant),
    }
    return { ...measured, ...review({ plan, look, fit, measured }) }
  }
}

function behindOf(scene: Scene, { middle: behind }: Fit): BackgroundPrediction['behind'] {
  if (behind.kind === 'paper') return 'paper'
  if (behind.kind === 'front') return 'front'
  const scrim = scene.pieces.some((piece) => piece.transmittance > 0 && behind.surfaceId?.startsWith(`piece:${piece.id}:`))
  return scrim ? 'front' : 'wall'
}

function framingOf(scene: Scene, fit: Fit): Framing {
  const { view } = builtSet(scene)
  const subjectDistanceMetres = view.focusMetres
  const backdropDistance = Math.max(0.01, (scene.backdrop.yMetres - view.place[1]) / Math.max(view.ahead[1], 0.01))
  const atSubject = frameSizeAt(view, subjectDistanceMetres)
  const atBackdrop = frameSizeAt(view, backdropDistance)
  const angles = anglesOfView(view)
  return {
    atSubjectWidthMetres: atSubject.widthMetres,
    atSubjectHeightMetres: atSubject.heightMetres,
    atBackdropWidthMetres: atBackdrop.widthMetres,
    atBackdropHeightMetres: atBackdrop.heightMetres,
    backdropFillsFrame: scene.backdrop.kind === 'none' || fit.wallCorners === 0,
    horizontalDegrees: angles.horizontalDegrees,
    verticalDegrees: angles.verticalDegrees,
    subjectDistanceMetres,
  }
}

function depthOf(look: Look, taking: Taking, scene: Scene): DepthOfField {
  const { camera } = look
  const circle = circleOfConfusionMillimetres(camera.sensorWidthMillimetres, camera.sensorHeightMillimetres)
  const distanceMillimetres = builtSet(scene).view.focusMetres * 1000
  const depth = depthOfField(camera.focalLengthMillimetres, taking.fNumber, circle, distanceMillimetres)
  const isFinite = Number.isFinite(depth.farMillimetres)
  return {
    nearMetres: depth.nearMillimetres / 1000,
    farMetres: isFinite ? depth.farMillimetres / 1000 : null,
    totalMetres: isFinite ? depth.totalMillimetres / 1000 : null,
  }
}

function ambientOf(plan: Plan, taking: Taking, ambient: AmbientLight, domeConstant: number): AmbientPrediction {
  return { lux: plan.room.ambientLux, stops: meterReading(ambient.luxSeconds, taking, domeConstant).stops }
}
