import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { displaySpace } from './displaySpace.ts'
import { handSize } from './handSize.ts'
import { pictureDesk } from './pictureDesk.ts'
import type { DrawnPicture } from './pictureOrders.ts'

/** Tall enough for any print: the hand's size is what limits it. */
const PRINT_HEIGHT_PIXELS = 600

interface Begun {
  readonly plan: Plan
  readonly lookId: string
  readonly drawn: Promise<DrawnPicture>
}

let begun: Begun | null = null

/**
 * Orders a look's picture, small as under a hand, before there is a board to show it on: its numbers and the page
 * around it are made meanwhile.
 */
export function beginFirstPicture(plan: Plan, lookId: string): void {
  const desk = pictureDesk()
  const camera = plan.looks[lookId]?.camera
  if (desk === null || camera === undefined) return
  const aspect = camera.sensorWidthMillimetres / camera.sensorHeightMillimetres
  const drawn = new Promise<DrawnPicture>((resolve) => desk.order({
    slot: 'first picture', kind: 'hand', plan, lookId, ...handSize(PRINT_HEIGHT_PIXELS * aspect, PRINT_HEIGHT_PIXELS),
    soloLightId: null, coarse: true, view: 'picture', space: displaySpace(),
  }, resolve))
  begun = { plan, lookId, drawn }
}

/** What was begun of this very look, once: null where it was not, and whoever waits for it has to order. */
export function firstPictureOf(plan: Plan, lookId: string): Promise<DrawnPicture> | null {
  const found = begun?.plan === plan && begun.lookId === lookId ? begun.drawn : null
  begun = null
  return found
}
