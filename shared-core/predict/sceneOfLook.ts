import type { Modifier } from '../plan/schema/kit.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Scene, SceneLight, ScenePiece } from '../set/scene.ts'
import { Stage, StagesByKey } from './stage.ts'

/**
 * The set in space, without powers, gels or exposure: what light's geometry depends on. Its parts keep their identity
 * while the plan's own parts do, so that a changed power does not look like a moved light.
 */
export class SceneStage {
  private readonly lights = new StagesByKey<SceneLight>()
  private readonly pieces = new StagesByKey<ScenePiece>()
  private readonly modifiers = new StagesByKey<Modifier>()
  private readonly lightList = new Stage<readonly SceneLight[]>()
  private readonly pieceList = new Stage<readonly ScenePiece[]>()
  private readonly subject = new Stage<Scene['subject']>()
  private readonly backdrop = new Stage<Scene['backdrop']>()
  private readonly room = new Stage<Scene['room']>()
  private readonly camera = new Stage<Scene['camera']>()
  private readonly scene = new Stage<Scene>()

  of(plan: Plan, look: Look): Scene {
    const lights = lightsInSetUpOrder(look).flatMap(([id, light]) => {
      const inKit = plan.modifiers[light.modifierId]
      if (!inKit) return []
      const modifier = this.modifiers.of(light.modifierId, shapeOf(inKit), () => inKit)
      return [this.lights.of(id, [light.place, light.aim, light.rollDegrees, light.grid, modifier], () => ({
        id, place: light.place, aim: light.aim, rollDegrees: light.rollDegrees, grid: light.grid, modifier,
      }))]
    })
    this.lights.keepOnly(new Set(Object.keys(look.lights)))
    this.modifiers.keepOnly(new Set(Object.values(look.lights).map(({ modifierId }) => modifierId)))
    const pieces = Object.entries(look.pieces).map(([id, piece]) => this.pieces.of(id, [piece], () => ({ id, ...piece })))
    this.pieces.keepOnly(new Set(Object.keys(look.pieces)))

    const { subject: s, backdrop: b, camera: c } = look
    const parts = [
      this.lightList.of(lights, () => lights),
      this.pieceList.of(pieces, () => pieces),
      this.subject.of(
        [s.xMetres, s.yMetres, s.posture, s.heightMetres, s.turnDegrees, s.headTurnDegrees, s.headTiltDegrees], () => s),
      this.backdrop.of([b.kind, b.swatch, b.yMetres, b.centreXMetres, b.widthMetres, b.topMetres], () => b),
      this.room.of([plan.room], () => plan.room),
      this.camera.of(
        [c.place, c.aim, c.focalLengthMillimetres, c.sensorWidthMillimetres, c.sensorHeightMillimetres], () => c),
    ] as const
    return this.scene.of(parts, () => {
      const [lightsOf, piecesOf, subject, backdrop, room, camera] = parts
      return { lights: lightsOf, pieces: piecesOf, subject, backdrop, room, camera }
    })
  }
}

/** What of a modifier shapes light or needs room: its name, count and what the meter taught move nothing. */
function shapeOf({ kind, widthMetres, heightMetres, depthMetres, diffusers }: Modifier): readonly unknown[] {
  return [kind, widthMetres, heightMetres, depthMetres, diffusers]
}

/** Set-up order, then letter: the order of Singles, of every table, and of the sums (so that sums are repeatable). */
export function lightsInSetUpOrder(look: Look): (readonly [id: string, light: Look['lights'][string]])[] {
  return Object.entries(look.lights).sort(([idA, a], [idB, b]) =>
    a.setUpOrder - b.setUpOrder || compareText(a.letter, b.letter) || compareText(idA, idB))
}

/** By code unit, never by locale: two devices must agree. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
