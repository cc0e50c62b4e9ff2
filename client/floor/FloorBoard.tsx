import { useCallback, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { useShallow } from 'zustand/react/shallow'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { FloorNotes } from '../notes/pencil/FloorNotes.tsx'
import { usePencil } from '../notes/pencil/pencilStore.ts'
import { useBoard, useBoardStore, useBoardUnhurried } from '../session/useBoard.ts'
import { setSheet } from '../session/pageStore.ts'
import { FloorCanvas } from './canvas/FloorCanvas.tsx'
import { usePalette } from './canvas/palette.ts'
import { Hands } from './gestures/hands.ts'
import type { Placing } from './gestures/placing.ts'
import type { Scene } from './gestures/scene.ts'
import { noseOf } from './gestures/thingEdits.ts'
import { MenuAt } from './MenuAt.tsx'
import { heldThings } from './others/heldThings.ts'
import { OthersLayer } from './others/OthersLayer.tsx'
import { PlacingWords } from './PlacingWords.tsx'
import { ScaleBar } from './ScaleBar.tsx'
import { layTapes } from './tapes/layTapes.ts'
import { TapeLabels } from './tapes/TapeLabels.tsx'
import { useTapeType } from './tapes/useTapeType.ts'
import { keyText, liftedFrom, thingsIn, thingsOf, type Thing, type ThingKey } from './things.ts'
import { obstaclesOf } from './throw/obstacles.ts'
import { CELLS, throwPlane } from './throw/throwPlane.ts'
import type { ThrowPlanes } from './throw/useThrowField.ts'
import type { ThrowHeight } from './throw/throwHeight.ts'
import { useRehearsal } from './useRehearsal.ts'
import { useFittedView } from './useFittedView.ts'
import { ViewButtons } from './ViewButtons.tsx'
import { project, type DrawnPoint, type ViewKind } from './view/projection.ts'
import { roomBounds } from './view/setBounds.ts'
import { centredOn } from './view/viewTransform.ts'

interface FloorBoardProps {
  readonly view: ViewKind
  readonly throwHeight: ThrowHeight
  readonly placing: Placing | null
  readonly onPlaced: () => void
}

/** One drawing of the set with everything a hand can do on it. */
export function FloorBoard({ view, throwHeight, placing, onPlaced }: FloorBoardProps) {
  const store = useBoardStore()
  const shown = useBoard((board) => board.shown)
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const prediction = useBoard((board) => board.prediction)
  const selection = useBoard((board) => board.selection)
  const soloLightId = useBoard((board) => board.soloLightId)
  const mayEdit = useBoard((board) => board.mayEdit)
  const units = useBoard((board) => board.units)
  // Pointers move all the time; only those with something in hand change what is drawn here.
  const busyPeople = useBoard(useShallow((board) => board.people.filter(({ isSelf, inHand }) => !isSelf && inHand !== null)))
  const pencilOn = usePencil((state) => state.isOn)
  const palette = usePalette()
  useRehearsal()
  const hintId = useId()
  const element = useRef<HTMLDivElement>(null)
  const look = lookOf(shown, lookId)

  const things = useMemo(() => thingsIn(thingsOf(shown, look), view), [shown, look, view])
  const atRest = useMemo(() => (plan.looks[lookId] === undefined ? [] : thingsOf(plan, lookOf(plan, lookId))), [plan, lookId])
  const lifted = useMemo(() => (shown === plan ? NONE : liftedFrom(atRest, things)), [shown, plan, atRest, things])
  const selected = useMemo(() => asThing(selection), [selection])
  const { panel, transform, changeTransform, fit, fitted, keepSteady } = useFittedView(element, view, shown.room, things, lookId)
  const length = useCallback((metres: number) => formatLength(metres, units), [units])
  const type = useTapeType(element)
  const [memory] = useState(() => new Map<string, DrawnPoint>())
  const tapes = useMemo(
    () => layTapes(things, { look, prediction, view, transform, panel, length, selected, ...type }, memory),
    [things, look, prediction, view, transform, panel, length, selected, type, memory],
  )

  const thrown = useBoardUnhurried(useShallow((board) => ({ plan: board.shown, look: lookOf(board.shown, board.lookId), prediction: board.prediction })))
  const inMotion = thrown.plan !== plan
  const nose = noseOf(thrown.look)[2]
  const { xMetres, yMetres } = thrown.look.subject
  const planes = useMemo((): ThrowPlanes => {
    const cutInto = (cells: number) => throwPlane(view, roomBounds(thrown.plan.room, view), [xMetres, yMetres, throwHeight === 'head' ? nose : 0], cells)
    return { coarse: cutInto(CELLS.coarse), fine: cutInto(CELLS.fine) }
  }, [view, thrown.plan.room, xMetres, yMetres, nose, throwHeight])
  const { pieces, subject, backdrop } = thrown.look
  const obstacles = useMemo(() => obstaclesOf({ pieces, subject, backdrop }, thrown.plan.room), [pieces, subject, backdrop, thrown.plan.room])

  const [menu, setMenu] = useState<{ readonly key: ThingKey; readonly at: DrawnPoint } | null>(null)
  const scene = useRef<Scene>({ view, transform, things, selected, placing })
  useLayoutEffect(() => {
    scene.current = { view, transform, things, selected, placing }
  })
  const focusThing = useCallback((key: ThingKey | null) => {
    const mark = key === null ? '[data-thing]' : `[data-thing="${CSS.escape(keyText(key))}"]`
    element.current?.querySelector<HTMLElement>(mark)?.focus({ preventScroll: true })
  }, [])
  const [hands, setHands] = useState<Hands | null>(null)
  useEffect(() => {
    const panelElement = element.current
    // With the pencil in it a hand moves nothing.
    if (panelElement === null || pencilOn) return
    const made = new Hands(store, {
      scene: () => scene.current,
      changeTransform,
      showMenu: (key, at) => setMenu({ key, at }),
      endPlacing: onPlaced,
      hover: (over) => panelElement.setAttribute('data-over', over),
      steady: keepSteady,
      focusThing,
    })
    setHands(made)
    return made.attach(panelElement)
  }, [store, changeTransform, keepSteady, focusThing, onPlaced, pencilOn])

  const colourOf = useCallback((id: string) => prediction.lights.find((one) => one.id === id)?.gel.onWhite ?? '#ffffff', [prediction])
  const isOn = useCallback((id: string) => look.lights[id]?.on ?? true, [look])
  const reach = useCallback(
    (thing: Thing, inSight: boolean) => {
      store.getState().select(thing.key)
      if (!inSight) changeTransform((now) => centredOn(now, project(view, thing.place), panel))
    },
    [store, changeTransform, view, panel],
  )
  const held = useMemo(() => heldThings(busyPeople, lookId, things), [busyPeople, lookId, things])
  const heldByOthers = useMemo(() => held.map(({ thing }) => thing), [held])

  return (
    <div ref={element} className="floor-board" data-placing={placing !== null} data-may-edit={mayEdit}>
      {panel.width > 0 && (
        <>
          <FloorCanvas
            plan={shown} look={look} prediction={prediction} view={view} transform={transform} panel={panel} palette={palette}
            things={things} lifted={lifted} thrown={thrown} planes={planes} inMotion={inMotion} obstacles={obstacles} selected={selected} soloLightId={soloLightId} mayEdit={mayEdit}
            heldByOthers={heldByOthers}
          />
          <TapeLabels tapes={tapes} selected={selected} colourOf={colourOf} isOn={isOn} onReach={reach} onOpen={showDetails} hintId={hintId} />
          <FloorNotes view={view} transform={transform} panel={panel} things={things} tapes={tapes} />
          <OthersLayer held={held} tapes={tapes} lookId={lookId} view={view} transform={transform} />
        </>
      )}
      <p id={hintId} className="heard">
        {mayEdit
          ? 'Enter shows its details; arrow keys move it by a centimetre, with Shift by ten; Alt and arrows turn it; Shift and D duplicates, Delete removes. The list holds every number.'
          : 'To look at only. The list holds every number.'}
      </p>
      <ScaleBar pixelsPerMetre={transform.pixelsPerMetre} units={units} />
      <ViewButtons changeTransform={changeTransform} panel={panel} fit={fit} fitted={fitted} />
      {placing !== null && hands !== null && <PlacingWords placing={placing} onMiddle={() => hands.setDown([panel.width / 2, panel.height / 2])} onLeave={onPlaced} />}
      {menu !== null && <MenuAt thing={menu.key} at={menu.at} onClose={() => setMenu(null)} onClosed={() => focusThing(menu.key)} />}
    </div>
  )
}

function lookOf(plan: Plan, lookId: string): Look {
  const look = plan.looks[lookId]
  if (look === undefined) throw new Error('The board shows a look that is not in its plan')
  return look
}

const NONE: ReadonlySet<Thing> = new Set()

const showDetails = () => setSheet('low')

function asThing(selection: { readonly kind: string; readonly id?: string } | null): ThingKey | null {
  if (selection === null) return null
  const { kind, id } = selection
  if ((kind === 'light' || kind === 'piece' || kind === 'point') && id !== undefined) return { kind, id }
  return kind === 'camera' || kind === 'subject' || kind === 'backdrop' ? { kind } : null
}
