import { setMaxListeners } from 'node:events'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Hands, type HandsPanel } from '../../client/floor/gestures/hands.ts'
import { startPlacing } from '../../client/floor/gestures/placing.ts'
import type { Scene } from '../../client/floor/gestures/scene.ts'
import { findThing } from '../../client/floor/gestures/hit.ts'
import { thingsOf, type ThingKey } from '../../client/floor/things.ts'
import { project, type DrawnPoint } from '../../client/floor/view/projection.ts'
import { pixelAt, type ViewTransform } from '../../client/floor/view/viewTransform.ts'
import type { Role } from '../../client/session/board.ts'
import { createBoardStore } from '../../client/session/boardStore.ts'
import { noCompany } from '../../client/session/company.ts'
import { demoLookId as lookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import { createLocalPlan } from './localPlan.ts'

// The few parts of a page that a hand needs, so that gestures are checked without a browser; the browser checks see the rest.

class FakeElement extends EventTarget {
  readonly getBoundingClientRect = () => ({ left: 0, top: 0 })
  readonly setPointerCapture = () => undefined
  readonly contains = () => true
  readonly closest = () => null
}

class FakePointerEvent extends Event {
  readonly clientX: number
  readonly clientY: number
  readonly pointerId: number
  readonly pointerType: string
  readonly shiftKey: boolean
  readonly button = 0
  constructor(type: string, [x, y]: DrawnPoint, part: { pointerId?: number; pointerType?: string; shiftKey?: boolean } = {}) {
    super(type)
    this.clientX = x
    this.clientY = y
    this.pointerId = part.pointerId ?? 1
    this.pointerType = part.pointerType ?? 'mouse'
    this.shiftKey = part.shiftKey ?? false
  }
}

class FakeKeyEvent extends Event {
  readonly shiftKey = false
  readonly ctrlKey = false
  readonly metaKey = false
  readonly altKey = false
  constructor(type: string, readonly key: string) {
    super(type)
  }
}

const transform: ViewTransform = { pixelsPerMetre: 100, offsetX: 400, offsetY: 400 }
const lightId = Object.keys(demoPlan.looks[lookId]!.lights)[0]!
const lightKey: ThingKey = { kind: 'light', id: lightId }

function floorOf(role: Role) {
  const source = createLocalPlan(demoPlan)
  const written: PlanEdit[] = []
  const board = createBoardStore({
    plan: { ...source, write: (edit) => { written.push(edit); source.write(edit) } },
    company: noCompany, role, connection: { state: 'live', words: 'Live', notKept: null },
    predict: (_plan, id) => ({ lookId: id }) as Prediction,
    onNextFrame: (callback) => callback(), units: 'metric', keepUnits: () => undefined,
  })
  const held: (PlanEdit | null)[] = []
  board.setState({ hold: (edit) => void held.push(edit) })
  let scene: Scene = { view: 'floor', transform, things: thingsOf(demoPlan, demoPlan.looks[lookId]!), selected: null, placing: null }
  const asked = { transforms: [] as ViewTransform[], menus: [] as ThingKey[], placingEnded: 0, steady: false }
  const panel: HandsPanel = {
    scene: () => scene,
    changeTransform: (change) => void asked.transforms.push(change(transform)),
    showMenu: (key) => void asked.menus.push(key),
    endPlacing: () => void (asked.placingEnded += 1),
    steady: (steady) => void (asked.steady = steady),
    hover: () => undefined,
    focusThing: () => undefined,
  }
  const element = new FakeElement()
  const detach = new Hands(board, panel).attach(element as unknown as HTMLElement)
  return { board, element, written, held, asked, detach, show: (part: Partial<Scene>) => { scene = { ...scene, ...part } } }
}

/** Inside the body of the light, just behind its front. */
function grip(): DrawnPoint {
  const thing = findThing(thingsOf(demoPlan, demoPlan.looks[lookId]!), lightKey)!
  const [x, y] = pixelAt(transform, project('floor', thing.place))
  const [u, v] = project('floor', thing.axis)
  return [x - u * 6, y - v * 6]
}

let frames: (() => void)[] = []
const nextPicture = () => frames.splice(0).forEach((callback) => callback())

// One signal stops all of a hand's listeners; Node warns at eleven, a page does not.
setMaxListeners(20)

beforeEach(() => {
  frames = []
  vi.useFakeTimers()
  vi.stubGlobal('window', new EventTarget())
  vi.stubGlobal('Element', FakeElement)
  vi.stubGlobal('HTMLInputElement', class {})
  vi.stubGlobal('PointerEvent', FakePointerEvent)
  vi.stubGlobal('requestAnimationFrame', (callback: () => void) => frames.push(callback))
  vi.stubGlobal('cancelAnimationFrame', (id: number) => frames.splice(id - 1, 1))
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('a hand on the Floor', () => {
  const [x, y] = grip()

  it('shows a drag once a picture and writes it once, when it lets go', () => {
    const { element, written, held, board, asked } = floorOf('photographer')
    element.dispatchEvent(new FakePointerEvent('pointerdown', [x, y]))
    expect(asked.steady).toBe(true)
    for (let i = 1; i <= 5; i++) element.dispatchEvent(new FakePointerEvent('pointermove', [x + i * 10, y]))
    expect(held).toHaveLength(0)
    nextPicture()
    expect(held).toHaveLength(1)
    expect(written).toHaveLength(0)
    element.dispatchEvent(new FakePointerEvent('pointerup', [x + 50, y]))
    expect(written).toHaveLength(1)
    expect(asked.steady).toBe(false)
    const before = demoPlan.looks[lookId]!.lights[lightId]!.place
    expect(board.getState().plan.looks[lookId]!.lights[lightId]!.place.xMetres).toBeCloseTo(before.xMetres + 0.5, 9)
    expect(board.getState().selection).toEqual(lightKey)
  })

  it('lets go of everything at Escape', () => {
    const { element, written, held } = floorOf('photographer')
    element.dispatchEvent(new FakePointerEvent('pointerdown', [x, y]))
    element.dispatchEvent(new FakePointerEvent('pointermove', [x + 80, y]))
    nextPicture()
    window.dispatchEvent(new FakeKeyEvent('keydown', 'Escape'))
    element.dispatchEvent(new FakePointerEvent('pointerup', [x + 80, y]))
    expect(held.at(-1)).toBeNull()
    expect(written).toHaveLength(0)
  })

  it('selects with a press and changes nothing', () => {
    const { element, written, board } = floorOf('photographer')
    element.dispatchEvent(new FakePointerEvent('pointerdown', [x, y]))
    element.dispatchEvent(new FakePointerEvent('pointerup', [x + 1, y]))
    expect(board.getState().selection).toEqual(lightKey)
    expect(written).toHaveLength(0)
  })

  it('without the right to edit selects, says why, and moves nothing', () => {
    const { element, written, held, board } = floorOf('client')
    element.dispatchEvent(new FakePointerEvent('pointerdown', [x, y]))
    element.dispatchEvent(new FakePointerEvent('pointermove', [x + 60, y]))
    nextPicture()
    element.dispatchEvent(new FakePointerEvent('pointerup', [x + 60, y]))
    expect(board.getState().selection).toEqual(lightKey)
    expect(board.getState().lastWords).toBe(board.getState().mayNotBecause)
    expect(board.getState().lastWords).not.toBe('')
    expect(held).toHaveLength(0)
    expect(written).toHaveLength(0)
  })

  it('slides the view on the bare floor', () => {
    const { element, asked, written } = floorOf('photographer')
    element.dispatchEvent(new FakePointerEvent('pointerdown', [5, 5]))
    element.dispatchEvent(new FakePointerEvent('pointermove', [35, 25]))
    expect(asked.transforms.at(-1)).toMatchObject({ offsetX: 430, offsetY: 420, pixelsPerMetre: 100 })
    expect(written).toHaveLength(0)
  })

  it('drops the drag when a second finger comes, and zooms', () => {
    const { element, asked, written, held } = floorOf('photographer')
    const touch = (type: string, pointerId: number, at: DrawnPoint) => element.dispatchEvent(new FakePointerEvent(type, at, { pointerId, pointerType: 'touch' }))
    touch('pointerdown', 1, [x, y])
    touch('pointermove', 1, [x + 30, y])
    nextPicture()
    touch('pointerdown', 2, [x + 130, y])
    touch('pointermove', 2, [x + 230, y])
    touch('pointerup', 1, [x + 30, y])
    touch('pointerup', 2, [x + 230, y])
    expect(held.at(-1)).toBeNull()
    expect(written).toHaveLength(0)
    expect(asked.transforms.at(-1)!.pixelsPerMetre).toBeCloseTo(200, 6)
  })

  it('opens the menu after a long press of a finger, and not when the finger has moved', () => {
    const { element, asked } = floorOf('photographer')
    const touch = (type: string, at: DrawnPoint) => element.dispatchEvent(new FakePointerEvent(type, at, { pointerType: 'touch' }))
    touch('pointerdown', [x, y])
    vi.advanceTimersByTime(600)
    nextPicture()
    touch('pointerup', [x, y])
    expect(asked.menus).toEqual([lightKey])
    touch('pointerdown', [x, y])
    touch('pointermove', [x + 40, y])
    vi.advanceTimersByTime(600)
    nextPicture()
    touch('pointerup', [x + 40, y])
    expect(asked.menus).toHaveLength(1)
  })

  it('sets down what is being placed where it is pressed', () => {
    const { element, asked, written, board, show } = floorOf('photographer')
    const started = startPlacing(demoPlan, lookId, { kind: 'point', name: 'Meter point' })
    if (!started.ok) throw new Error(started.message)
    show({ placing: started.placing })
    element.dispatchEvent(new FakePointerEvent('pointerdown', [300, 350]))
    element.dispatchEvent(new FakePointerEvent('pointerup', [300, 350]))
    expect(written).toHaveLength(1)
    expect(asked.placingEnded).toBe(1)
    const key = started.placing.key
    expect(board.getState().selection).toEqual(key)
    const point = key.kind === 'point' ? board.getState().plan.looks[lookId]!.points[key.id]! : null
    expect(point!.place).toMatchObject({ xMetres: -1, yMetres: 0.5 })
  })

  it('takes a run of arrow keys as one step of undo', () => {
    const { element, written, held, show } = floorOf('photographer')
    show({ selected: lightKey })
    for (let i = 0; i < 4; i++) element.dispatchEvent(new FakeKeyEvent('keydown', 'ArrowRight'))
    expect(held).toHaveLength(4)
    element.dispatchEvent(new FakeKeyEvent('keyup', 'ArrowRight'))
    expect(written).toHaveLength(1)
    const change = written[0]!.changes[0]!
    const before = demoPlan.looks[lookId]!.lights[lightId]!.place.xMetres
    expect('set' in change && change.set).toBeCloseTo(before + 0.04, 9)
  })
})
