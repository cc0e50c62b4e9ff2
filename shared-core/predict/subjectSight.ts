import type { Vector } from '../arithmetic/vector.ts'
import { drawIds, type IdBuffer } from '../picture/idBuffer.ts'
import { poseSubject, type PosedSubject } from '../picture/posedSubject.ts'
import { restPlaceInSet } from '../picture/restPlace.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { cameraView, framePositionOf, type CameraView } from '../set/camera.ts'
import type { Scene } from '../set/scene.ts'
import type { SubjectAsset } from '../subject/asset/format.ts'
import { SceneStage } from './sceneOfLook.ts'
import { Stage } from './stage.ts'

/** Cells of the grid over the Frame's longer side: finer than any Frame on a screen is pressed. */
const LONGER_CELLS = 640
/** A place of the surface lies this much behind its own facets at most, where they are cut coarse. */
const OWN_DEPTH_METRES = 0.006

/** What of a look's subject the camera sees where: which place of the surface lies under a point of the Frame, and whether a place is seen. */
export class SubjectSight {
  private readonly scene = new SceneStage()
  private readonly posed = new Stage<PosedSubject>()
  private readonly ids = new Stage<IdBuffer>()

  constructor(private readonly asset: SubjectAsset) {}

  /**
   * The place at rest, in metres, of what is seen of the subject there; null where the background shows.
   * @param frameX,frameY 0-1 from the left and the top
   * @throws RangeError when the plan has no such look
   */
  placeUnder(plan: Plan, lookId: string, frameX: number, frameY: number): Vector | null {
    const { ids, posed } = this.seen(plan, lookId)
    const gridX = frameX * ids.width - 0.5
    const gridY = frameY * ids.height - 0.5
    const [column, row] = [Math.round(gridX), Math.round(gridY)]
    const own = facetAt(ids, column, row)
    if (own < 0) return null
    let found: { readonly weights: Vector, readonly facet: number, readonly depth: number } | null = null
    // The point may lie in a neighbour of the facet that covers the middle of its cell.
    for (let k = 0; k < 9; k++) {
      const facet = facetAt(ids, column + (k % 3) - 1, row + Math.floor(k / 3) - 1)
      if (facet < 0) continue
      const { weights, depth, isInside } = weightsAt(ids, posed, facet, gridX, gridY)
      if (isInside && (found === null || depth < found.depth)) found = { weights, facet, depth }
    }
    const { facet, weights } = found ?? { facet: own, weights: weightsAt(ids, posed, own, gridX, gridY).weights }
    return restPlaceOf(this.asset, facet, weights)
  }

  /**
   * Whether the camera sees a place of the surface: inside the Frame and not behind another part of the subject.
   * @param place at rest, in metres
   * @throws RangeError when the plan has no such look
   */
  isSeen(plan: Plan, lookId: string, place: Vector): boolean {
    const { scene, view, ids } = this.seen(plan, lookId)
    const { frameX, frameY, depthMetres } = framePositionOf(view, restPlaceInSet(scene.subject, place))
    if (depthMetres <= 0 || frameX < 0 || frameX > 1 || frameY < 0 || frameY > 1) return false
    const column = Math.round(frameX * ids.width - 0.5)
    const row = Math.round(frameY * ids.height - 0.5)
    for (let k = 0; k < 9; k++) {
      const [x, y] = [column + (k % 3) - 1, row + Math.floor(k / 3) - 1]
      if (x < 0 || y < 0 || x >= ids.width || y >= ids.height) continue
      if (ids.depths[y * ids.width + x]! + OWN_DEPTH_METRES >= depthMetres) return true
    }
    return false
  }

  private seen(plan: Plan, lookId: string): { scene: Scene, view: CameraView, posed: PosedSubject, ids: IdBuffer } {
    const look = Object.hasOwn(plan.looks, lookId) ? plan.looks[lookId] : undefined
    if (look === undefined) throw new RangeError(`The plan has no look called ${lookId}`)
    const scene = this.scene.of(plan, look)
    const view = cameraView(scene.camera)
    const posed = this.posed.of([scene.subject], () => poseSubject(this.asset, scene.subject))
    const ids = this.ids.of([posed, scene.camera], () => {
      const longer = Math.max(view.widthPerMetre, view.heightPerMetre)
      return drawIds(posed, view, Math.round((LONGER_CELLS * view.widthPerMetre) / longer), Math.round((LONGER_CELLS * view.heightPerMetre) / longer))
    })
    return { scene, view, posed, ids }
  }
}

function facetAt({ facets, width, height }: IdBuffer, x: number, y: number): number {
  return x < 0 || y < 0 || x >= width || y >= height ? -1 : facets[y * width + x]!
}

/** Where a point of the grid lies in a facet: weights of its corners on the surface, kept inside it. */
function weightsAt({ xs, ys, zs }: IdBuffer, { asset }: PosedSubject, facet: number, gridX: number, gridY: number): { weights: Vector, depth: number, isInside: boolean } {
  const [a, b, c] = [asset.triangles[3 * facet]!, asset.triangles[3 * facet + 1]!, asset.triangles[3 * facet + 2]!]
  const area = (xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (xs[c]! - xs[a]!) * (ys[b]! - ys[a]!)
  const onScreenA = ((xs[b]! - gridX) * (ys[c]! - gridY) - (xs[c]! - gridX) * (ys[b]! - gridY)) / area
  const onScreenB = ((xs[c]! - gridX) * (ys[a]! - gridY) - (xs[a]! - gridX) * (ys[c]! - gridY)) / area
  const onScreenC = 1 - onScreenA - onScreenB
  // Over depth, since what is far is drawn small.
  const [wa, wb, wc] = [Math.max(0, onScreenA) / zs[a]!, Math.max(0, onScreenB) / zs[b]!, Math.max(0, onScreenC) / zs[c]!]
  const whole = 1 / (wa + wb + wc)
  return {
    weights: [wa * whole, wb * whole, wc * whole],
    depth: (Math.max(0, onScreenA) + Math.max(0, onScreenB) + Math.max(0, onScreenC)) * whole,
    isInside: onScreenA >= 0 && onScreenB >= 0 && onScreenC >= 0,
  }
}

function restPlaceOf({ triangles, positions }: SubjectAsset, facet: number, weights: Vector): Vector {
  const along = (axis: number): number => weights.reduce((sum, weight, i) => sum + weight * positions[3 * triangles[3 * facet + i]! + axis]!, 0)
  return [along(0), along(1), along(2)]
}
