import { poseSubject } from '../../../shared-core/picture/posedSubject.ts'
import { surfaceSamples } from '../../../shared-core/picture/surfaceSamples.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../../shared-core/predict/lookPicture.ts'
import { cameraView } from '../../../shared-core/set/camera.ts'
import type { SubjectAsset } from '../../../shared-core/subject/asset/format.ts'

/** Head and shoulders from in front, small since nobody sees it: most pictures rest on that part of the surface. */
const SIZE = { width: 96, height: 128 }
const STANDING = {
  xMetres: 0, yMetres: 0, posture: 'standing', heightMetres: 1.7, turnDegrees: 0, headTurnDegrees: 0, headTiltDegrees: 0,
} as const
const IN_FRONT = cameraView({
  place: { xMetres: 0, yMetres: -2.4, zMetres: 1.5 }, aim: { xMetres: 0, yMetres: 0, zMetres: 1.5 },
  focalLengthMillimetres: 85, sensorWidthMillimetres: 24, sensorHeightMillimetres: 36,
})

/** After so many an engine has the picture's code in machine words; three times as many made no drag smoother. */
const LOOKS = 3
const MOVES = 20
/** So long without an order, and nobody is waiting. */
const QUIET_MS = 400

/**
 * Draws small pictures that nobody sees while nobody waits for one: before the first order what a subject's surface
 * remembers of itself, after it a light on the move if there is somebody who may move one. Then it is worked out, and
 * compiled, when a hand needs it.
 */
export class Rehearsal {
  private asset: SubjectAsset | null = null
  private picture: LookPicture | null = null
  private last: { readonly plan: Plan, readonly lookId: string } | null = null
  private isHandNear = false
  private looks = 0
  private moves = 0
  private next: ReturnType<typeof setTimeout> | undefined

  /** The subject is there. */
  begin(asset: SubjectAsset): void {
    this.asset = asset
    this.after(this.last === null ? 0 : QUIET_MS)
  }

  /** Somebody is there who may move a light, and sees where. */
  handIsNear(): void {
    this.isHandNear = true
    this.after(QUIET_MS)
  }

  /** An order has come: nothing is rehearsed before it is quiet again. */
  giveWay(): void {
    this.after(QUIET_MS)
  }

  /** What was last drawn, and is rehearsed from now on. */
  takeUp(plan: Plan, lookId: string): void {
    this.last = { plan, lookId }
    this.after(QUIET_MS)
  }

  private after(delayMs: number): void {
    clearTimeout(this.next)
    this.next = setTimeout(() => this.once(), delayMs)
  }

  /** One at a time: an order that has come meanwhile is next. */
  private once(): void {
    const { asset, last } = this
    if (asset === null) return
    if (last === null) {
      if (this.looks++ >= LOOKS) return
      surfaceSamples(poseSubject(asset, STANDING), IN_FRONT, SIZE.width, SIZE.height)
    } else {
      if (!this.isHandNear) return
      if (this.moves++ >= MOVES) {
        this.picture = null
        return
      }
      this.picture ??= new LookPicture(asset)
      this.picture.draw(withLightsMoved(last.plan, last.lookId, this.moves / 100), last.lookId, { ...SIZE, soloLightId: null, coarse: true })
    }
    this.after(0)
  }
}

function withLightsMoved(plan: Plan, lookId: string, byMetres: number): Plan {
  const look = plan.looks[lookId]
  if (look === undefined) return plan
  const lights = Object.fromEntries(Object.entries(look.lights).map(([id, light]) =>
    [id, { ...light, place: { ...light.place, xMetres: light.place.xMetres + byMetres } }]))
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights } } }
}
