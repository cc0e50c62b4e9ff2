import { type CameraView, cameraView } from './camera.ts'
import { type Emitter, emittersOf } from './emitter.ts'
import { type RoomBox, roomBox } from './room.ts'
import type { Scene, SceneLight } from './scene.ts'
import { type SubjectForm, subjectForm } from './subjectForm.ts'
import { type Surface, surfacesOf } from './surfaces.ts'

/** A scene standing: everything that geometry can say before any light is weighed. */
export interface BuiltSet {
  readonly scene: Scene
  readonly emittersByLight: ReadonlyMap<string, readonly Emitter[]>
  readonly form: SubjectForm
  readonly surfaces: readonly Surface[]
  readonly box: RoomBox
  readonly view: CameraView
}

const builtSets = new WeakMap<Scene, BuiltSet>()
const builtLights = new WeakMap<SceneLight, readonly Emitter[]>()

/** Builds a scene once and remembers it with the scene; a light whose object is unchanged is not built again. */
export function builtSet(scene: Scene): BuiltSet {
  let built = builtSets.get(scene)
  if (!built) {
    built = {
      scene,
      emittersByLight: new Map(scene.lights.map((light) => [light.id, emittersOfLight(light)])),
      form: subjectForm(scene.subject),
      surfaces: surfacesOf(scene.room, scene.backdrop, scene.pieces),
      box: roomBox(scene.room),
      view: cameraView(scene.camera),
    }
    builtSets.set(scene, built)
  }
  return built
}

function emittersOfLight(light: SceneLight): readonly Emitter[] {
  let emitters = builtLights.get(light)
  if (!emitters) builtLights.set(light, (emitters = emittersOf(light)))
  return emitters
}
