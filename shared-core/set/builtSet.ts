import { type CameraView, cameraView } from './camera.ts'
import { type Emitter, emittersOf } from './emitter.ts'
import { Occluders } from './occluders.ts'
import type { Scene, SceneLight } from './scene.ts'
import { type Surroundings, surroundingsOf } from './surroundings.ts'

/** A light standing in the set. */
export interface StandingLight {
  readonly id: string
  /** Its place among the scene's lights: the owner of its fronts. */
  readonly index: number
  readonly light: SceneLight
  readonly emitters: readonly Emitter[]
}

/** A scene standing: everything that geometry can say before any light is weighed. */
export interface BuiltSet extends Surroundings {
  readonly scene: Scene
  readonly surroundings: Surroundings
  readonly lights: ReadonlyMap<string, StandingLight>
  /** Subject, panels, and the fronts of lights. */
  readonly occludersWithFronts: Occluders
  readonly view: CameraView
}

const builtSets = new WeakMap<Scene, BuiltSet>()

/** Builds a scene once and remembers it with the scene; what is unchanged since another scene is not built again. */
export function builtSet(scene: Scene): BuiltSet {
  let built = builtSets.get(scene)
  if (!built) builtSets.set(scene, (built = build(scene)))
  return built
}

function build(scene: Scene): BuiltSet {
  const surroundings = surroundingsOf(scene)
  const lights = scene.lights.map((light, index) => ({ id: light.id, index, light, emitters: emittersOf(light) }))
  // Both faces of an umbrella are one plate; a bare tube hides nothing.
  const fronts = lights.flatMap(({ index, emitters }) =>
    emitters.slice(0, 1).filter(({ front }) => front.shape !== 'sphere').map((emitter) => ({ owner: index, emitter })))
  return {
    ...surroundings,
    scene,
    surroundings,
    lights: new Map(lights.map((light) => [light.id, light])),
    occludersWithFronts: new Occluders(surroundings.form.parts, surroundings.panels, fronts),
    view: cameraView(scene.camera),
  }
}
