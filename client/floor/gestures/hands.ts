import type { PlanEdit } from '../../../shared-core/plan/edit.ts'
import type { BoardStore } from '../../session/boardStore.ts'
import { sameThing, type ThingKey } from '../things.ts'
import type { DrawnPoint } from '../view/projection.ts'
import { metresAt, pinch, slide, zoomAbout, type ViewTransform } from '../view/viewTransform.ts'
import { dragEdit, type Drag } from './dragEdit.ts'
import { Nudge } from './nudge.ts'
import { oncePerFrame } from './oncePerFrame.ts'
import type { Scene } from './scene.ts'
import { isOverControls, isTouch, takenAt } from './taken.ts'

/** What hands ask of the panel. */
export interface HandsPanel {
  readonly scene: () => Scene
  readonly changeTransform: (change: (transform: ViewTransform) => ViewTransform) => void
  /** While steady, the view does not fit itself anew: what is in a hand must not slip from under it. */
  readonly steady: (steady: boolean) => void
  readonly showMenu: (key: ThingKey, at: DrawnPoint) => void
  readonly endPlacing: () => void
  readonly hover: (over: 'thing' | 'handle' | 'nothing' | 'hand') => void
  /** Puts the keyboard on a thing, or on the first when null. */
  readonly focusThing: (key: ThingKey | null) => void
}

type Holding =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'press'; readonly drag: Drag; readonly at: DrawnPoint }
  | { readonly kind: 'drag'; readonly drag: Drag; latest: PlanEdit | null }
  | { readonly kind: 'pan'; last: DrawnPoint; readonly start: DrawnPoint; moved: boolean }
  | { readonly kind: 'pinch' }
  | { readonly kind: 'placing' }

/** A press that moves less than this is a press and no drag. */
const SLOP_PIXELS = { touch: 9, mouse: 3 } as const
const LONG_PRESS_MS = 500

/** Everything a mouse or fingers do on the Floor. Keeps to the panel it is given; the board hears edits only. */
export class Hands {
  private holding: Holding = { kind: 'nothing' }
  private readonly fingers = new Map<number, DrawnPoint>()
  private longPress: ReturnType<typeof setTimeout> | null = null
  private readonly show = oncePerFrame<PlanEdit>((edit) => this.board.getState().hold(edit))
  private readonly point = oncePerFrame<DrawnPoint | null>((drawn) =>
    this.board.getState().point(drawn === null ? null : { xMetres: drawn[0], yMetres: -drawn[1] }),
  )
  private readonly nudge: Nudge

  constructor(
    private readonly board: BoardStore,
    private readonly panel: HandsPanel,
  ) {
    this.nudge = new Nudge(board, panel.scene, (key) => afterDrawing(() => panel.focusThing(key)))
  }

  /** Listens on the panel's element; gives back how to stop. */
  attach(element: HTMLElement): () => void {
    const stop = new AbortController()
    const { signal } = stop
    element.addEventListener('pointerdown', (event) => this.down(event, element), { signal })
    element.addEventListener('pointermove', (event) => this.move(event, element), { signal })
    element.addEventListener('pointerup', (event) => this.up(event, element), { signal })
    element.addEventListener('pointercancel', (event) => this.lift(event), { signal })
    element.addEventListener('pointerleave', () => this.point.set(null), { signal })
    element.addEventListener('wheel', (event) => this.wheel(event, element), { signal, passive: false })
    element.addEventListener('contextmenu', (event) => this.contextMenu(event, element), { signal })
    element.addEventListener('keydown', (event) => this.nudge.down(event), { signal })
    element.addEventListener('keyup', (event) => this.nudge.up(event), { signal })
    element.addEventListener('focusout', () => this.nudge.finish(), { signal })
    // In the capture phase, so that a drag hears Escape before whatever has the focus.
    window.addEventListener('keydown', (event) => this.escape(event), { signal, capture: true })
    return () => {
      stop.abort()
      this.letGo()
      this.point.cancel()
      this.board.getState().point(null)
    }
  }

  private down(event: PointerEvent, element: HTMLElement): void {
    this.nudge.finish()
    if (isOverControls(event)) return
    const pixel = pixelOf(event, element)
    if (isTouch(event)) {
      this.fingers.set(event.pointerId, pixel)
      if (this.fingers.size === 2) {
        this.letGo()
        this.holding = { kind: 'pinch' }
        return
      }
    }
    if (event.button !== 0 || this.holding.kind !== 'nothing') return
    element.setPointerCapture(event.pointerId)
    const scene = this.panel.scene()
    if (scene.placing !== null) {
      this.holding = { kind: 'placing' }
      this.preview(pixel)
      return
    }
    const taken = takenAt(scene, pixel, event)
    if (taken === null) {
      this.holding = { kind: 'pan', last: pixel, start: pixel, moved: false }
      return
    }
    const from = metresAt(scene.transform, pixel)
    this.holding = { kind: 'press', drag: { ...taken, view: scene.view, from }, at: pixel }
    this.panel.steady(true)
    if (!sameThing(scene.selected, taken.thing.key)) this.board.getState().select(taken.thing.key)
    this.panel.focusThing(taken.thing.key)
    if (isTouch(event)) {
      // On a busy page the time may be up before a move that came in time is heard: one picture later it has been.
      this.longPress = setTimeout(() => afterDrawing(() => {
        if (this.holding.kind !== 'press' || this.holding.at !== pixel) return
        this.holding = { kind: 'nothing' }
        this.panel.showMenu(taken.thing.key, pixel)
      }), LONG_PRESS_MS)
    }
  }

  private move(event: PointerEvent, element: HTMLElement): void {
    const pixel = pixelOf(event, element)
    const scene = this.panel.scene()
    if (scene.view === 'floor') this.point.set(metresAt(scene.transform, pixel))
    if (isTouch(event) && this.fingers.has(event.pointerId)) {
      if (this.holding.kind === 'pinch') return this.pinchTo(event.pointerId, pixel)
      this.fingers.set(event.pointerId, pixel)
    }
    const { holding } = this
    switch (holding.kind) {
      case 'nothing':
        if (isOverControls(event)) return
        if (scene.placing !== null) this.preview(pixel)
        else this.hoverAt(pixel, event)
        return
      case 'placing':
        return this.preview(pixel)
      case 'press':
        if (distance(pixel, holding.at) > slop(event)) this.startDrag(holding, pixel, event)
        return
      case 'drag':
        return this.dragTo(holding, pixel, event.shiftKey)
      case 'pan':
        if (!holding.moved && distance(pixel, holding.start) <= slop(event)) return
        holding.moved = true
        this.panel.changeTransform((transform) => slide(transform, pixel[0] - holding.last[0], pixel[1] - holding.last[1]))
        holding.last = pixel
        return
      case 'pinch':
        return
    }
  }

  private startDrag(press: Extract<Holding, { kind: 'press' }>, pixel: DrawnPoint, event: PointerEvent): void {
    this.clearLongPress()
    const { mayEdit, mayNotBecause } = this.board.getState()
    if (!mayEdit) {
      this.board.say(mayNotBecause ?? 'This board is yours to look at, not to change.')
      this.holding = { kind: 'pan', last: pixel, start: pixel, moved: true }
      return
    }
    const holding: Holding = { kind: 'drag', drag: press.drag, latest: null }
    this.holding = holding
    this.panel.hover('hand')
    this.dragTo(holding, pixel, event.shiftKey)
  }

  private dragTo(holding: Extract<Holding, { kind: 'drag' }>, pixel: DrawnPoint, alongAxis: boolean): void {
    const { plan, lookId } = this.board.getState()
    const result = dragEdit(plan, lookId, holding.drag, metresAt(this.panel.scene().transform, pixel), alongAxis)
    if (!result.ok) return
    holding.latest = result.edit
    this.show.set(result.edit)
  }

  private up(event: PointerEvent, element: HTMLElement): void {
    const { holding } = this
    const pixel = pixelOf(event, element)
    if (holding.kind === 'pan' && !holding.moved) this.board.getState().select(null)
    if (holding.kind === 'placing') this.setDown(pixel)
    if (holding.kind === 'drag') this.write(holding.latest)
    this.lift(event)
  }

  private write(edit: PlanEdit | null): void {
    this.show.cancel()
    if (edit !== null && edit.changes.length > 0) this.board.getState().edit(edit)
    else this.board.getState().hold(null)
  }

  private lift(event: PointerEvent): void {
    this.fingers.delete(event.pointerId)
    if (this.holding.kind === 'pinch' && this.fingers.size > 0) return
    if (event.type === 'pointercancel') this.letGo()
    this.clearLongPress()
    this.holding = { kind: 'nothing' }
    this.panel.steady(false)
    this.panel.hover('nothing')
  }

  /** Opens the hand without writing what was in it. */
  letGo(): void {
    this.clearLongPress()
    this.show.cancel()
    this.nudge.cancel()
    if (this.holding.kind === 'drag') this.board.getState().hold(null)
    this.holding = { kind: 'nothing' }
    this.panel.steady(false)
  }

  private escape(event: KeyboardEvent): void {
    if (event.key !== 'Escape') return
    if (this.panel.scene().placing !== null) {
      this.show.cancel()
      this.board.getState().hold(null)
      this.panel.endPlacing()
    } else if (this.holding.kind === 'drag' || this.holding.kind === 'press') {
      this.letGo()
    } else {
      return
    }
    event.stopPropagation()
    event.preventDefault()
  }

  /** Shows what is being placed under the pointer. */
  preview(pixel: DrawnPoint): void {
    const { placing, view, transform } = this.panel.scene()
    if (placing !== null) this.show.set(placing.editAt(view, metresAt(transform, pixel)))
  }

  /** Sets down what is being placed. */
  setDown(pixel: DrawnPoint): void {
    const { placing, view, transform } = this.panel.scene()
    if (placing === null) return
    this.write(placing.editAt(view, metresAt(transform, pixel)))
    this.board.getState().select(placing.key)
    this.panel.endPlacing()
    afterDrawing(() => this.panel.focusThing(placing.key))
  }

  private wheel(event: WheelEvent, element: HTMLElement): void {
    event.preventDefault()
    const pixel = pixelOf(event, element)
    const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1
    this.panel.changeTransform((transform) =>
      event.ctrlKey || event.metaKey
        ? zoomAbout(transform, pixel, Math.exp((-event.deltaY * unit) / 240))
        : slide(transform, -(event.shiftKey ? event.deltaY : event.deltaX) * unit, -(event.shiftKey ? 0 : event.deltaY) * unit),
    )
  }

  private contextMenu(event: MouseEvent, element: HTMLElement): void {
    event.preventDefault()
    if (this.panel.scene().placing !== null || isOverControls(event)) return
    const pixel = pixelOf(event, element)
    const taken = takenAt(this.panel.scene(), pixel, event)
    if (taken === null) return
    this.letGo()
    this.board.getState().select(taken.thing.key)
    this.panel.showMenu(taken.thing.key, pixel)
  }

  private pinchTo(pointerId: number, pixel: DrawnPoint): void {
    const before = [...this.fingers.values()]
    this.fingers.set(pointerId, pixel)
    const after = [...this.fingers.values()]
    const [a, b, c, d] = [before[0], before[1], after[0], after[1]]
    if (a !== undefined && b !== undefined && c !== undefined && d !== undefined) {
      this.panel.changeTransform((transform) => pinch(transform, [a, b], [c, d]))
    }
  }

  private hoverAt(pixel: DrawnPoint, event: PointerEvent): void {
    if (isTouch(event)) return
    const taken = takenAt(this.panel.scene(), pixel, event)
    this.panel.hover(taken === null ? 'nothing' : taken.handle === 'body' ? 'thing' : 'handle')
  }

  private clearLongPress(): void {
    if (this.longPress !== null) clearTimeout(this.longPress)
    this.longPress = null
  }
}

/** Once what was just written stands on the screen. */
function afterDrawing(call: () => void): void {
  requestAnimationFrame(call)
}

function pixelOf(event: MouseEvent, element: HTMLElement): DrawnPoint {
  const box = element.getBoundingClientRect()
  return [event.clientX - box.left, event.clientY - box.top]
}

function slop(event: PointerEvent): number {
  return isTouch(event) ? SLOP_PIXELS.touch : SLOP_PIXELS.mouse
}

function distance(a: DrawnPoint, b: DrawnPoint): number {
  return Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2)
}
