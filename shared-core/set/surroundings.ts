import { Occluders } from './occluders.ts'
import type { Panel } from './panels.ts'
import { type Patches, patchesOf } from './patches.ts'
import { type RoomBox, roomBox } from './room.ts'
import type { Scene, SceneBackdrop, ScenePiece, SceneRoom, SceneSubject } from './scene.ts'
import { type SubjectForm, subjectForm } from './subjectForm.ts'
import { type Surface, surfacesOf } from './surfaces.ts'

/** Everything in the set but the lights and the camera. What is worked out for it outlives a moved light. */
export interface Surroundings {
  readonly form: SubjectForm
  readonly surfaces: readonly Surface[]
  readonly surfaceAreaSquareMetres: number
  readonly patches: Patches
  readonly box: RoomBox
  /** Panels that stand in light's way: paper, pieces, columns. */
  readonly panels: readonly Panel[]
  /** Of subject and panels. */
  readonly occluders: Occluders
}

interface Remembered {
  readonly room: SceneRoom
  readonly backdrop: SceneBackdrop
  readonly subject: SceneSubject
  readonly surroundings: Surroundings
}

const rememberedByPieces = new WeakMap<readonly ScenePiece[], Remembered>()

/** The surroundings of a scene, remembered while room, backdrop, subject and pieces are the same objects. */
export function surroundingsOf(scene: Scene): Surroundings {
  const { room, backdrop, subject, pieces } = scene
  const before = rememberedByPieces.get(pieces)
  if (before && before.room === room && before.backdrop === backdrop && before.subject === subject) {
    return before.surroundings
  }
  const form = subjectForm(subject)
  const surfaces = surfacesOf(room, backdrop, pieces)
  const panels = [...onePanelPerCloth(surfaces), ...columnPanels(room)]
  const surroundings: Surroundings = {
    form,
    surfaces,
    surfaceAreaSquareMetres: surfaces.reduce((sum, { areaSquareMetres }) => sum + areaSquareMetres, 0),
    panels,
    patches: patchesOf(surfaces),
    box: roomBox(room),
    occluders: new Occluders(form.parts, panels, []),
  }
  rememberedByPieces.set(pieces, { room, backdrop, subject, surroundings })
  return surroundings
}

/** Front and back of a piece are one plate to the light. */
function onePanelPerCloth(surfaces: readonly Surface[]): readonly Panel[] {
  return surfaces.filter(({ id, isRoom }) => !isRoom && !id.endsWith(':back')).flatMap(({ panels }) => panels)
}

/** Columns block with their four sides; what they return is as good as nothing. */
function columnPanels(room: SceneRoom): readonly Panel[] {
  const half = room.heightMetres / 2
  return Object.values(room.columns).flatMap(({ xMetres: x, yMetres: y, widthMetres, depthMetres }) =>
    ([-1, 1] as const).flatMap((side): Panel[] => [
      {
        centre: [x, y + (side * depthMetres) / 2, half], across: [1, 0, 0], up: [0, 0, 1], normal: [0, side, 0],
        halfWidthMetres: widthMetres / 2, halfHeightMetres: half,
      },
      {
        centre: [x + (side * widthMetres) / 2, y, half], across: [0, 1, 0], up: [0, 0, 1], normal: [side, 0, 0],
        halfWidthMetres: depthMetres / 2, halfHeightMetres: half,
      },
    ]))
}
