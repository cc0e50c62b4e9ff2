import type Konva from 'konva'
import { memo } from 'react'
import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../../shared-core/predict/prediction.ts'
import { roomBox } from '../../../shared-core/set/room.ts'
import { keyText, modifierOf, sameThing, type Thing, type ThingKey } from '../things.ts'
import type { Obstacles } from '../throw/obstacles.ts'
import type { ThrowPlanes } from '../throw/useThrowField.ts'
import type { ViewKind } from '../view/projection.ts'
import type { PanelSize, ViewTransform } from '../view/viewTransform.ts'
import { BackdropShape } from './BackdropShape.tsx'
import { CameraShape } from './CameraShape.tsx'
import { HandleShapes } from './HandleShapes.tsx'
import { Group, Layer, Stage } from './konva.ts'
import { LightShape } from './LightShape.tsx'
import { OthersShape } from './OthersShape.tsx'
import type { Palette } from './palette.ts'
import { PieceShape } from './PieceShape.tsx'
import { PointShape } from './PointShape.tsx'
import { RoomShape } from './RoomShape.tsx'
import { SubjectShape } from './SubjectShape.tsx'
import { SubjectT } from './SubjectT.tsx'
import { ThrowImage } from './ThrowImage.tsx'

/** A look with what is predicted of it. */
export interface Thrown {
  readonly plan: Plan
  readonly look: Look
  readonly prediction: Prediction
}

export interface FloorCanvasProps {
  readonly plan: Plan
  readonly look: Look
  readonly prediction: Prediction
  readonly view: ViewKind
  readonly transform: ViewTransform
  readonly panel: PanelSize
  readonly palette: Palette
  readonly things: readonly Thing[]
  /** Those of them that a hand holds away from where they stand. */
  readonly lifted: ReadonlySet<Thing>
  /** What throws are drawn from: it may lag a little behind a hand. */
  readonly thrown: Thrown
  readonly planes: ThrowPlanes
  /** Something is in a hand. */
  readonly inMotion: boolean
  readonly obstacles: Obstacles
  readonly selected: ThingKey | null
  readonly soloLightId: string | null
  readonly mayEdit: boolean
  /** Things that somebody else has in hand. */
  readonly heldByOthers: readonly Thing[]
}

/** The set drawn to scale. Room, throws, standing things, and what a hand is on lie on canvases of their own, so that each draws only when it changes. */
export const FloorCanvas = memo(function FloorCanvas(props: FloorCanvasProps) {
  const { plan, view, transform, panel, palette, things, lifted, selected, mayEdit } = props
  const inMetres = { x: transform.offsetX, y: transform.offsetY, scaleX: transform.pixelsPerMetre, scaleY: transform.pixelsPerMetre }
  const chosen = things.find((thing) => sameThing(thing.key, selected))
  return (
    <Stage width={panel.width} height={panel.height} listening={false} className="floor-stage">
      <Layer listening={false} ref={drawWithPage}>
        <Group {...inMetres}>
          <RoomShape room={plan.room} view={view} palette={palette} pixelsPerMetre={transform.pixelsPerMetre} />
        </Group>
      </Layer>
      <Layer listening={false} ref={drawAtScreenPixels}>
        <Group {...inMetres}>
          <Throws {...props.thrown} planes={props.planes} inMotion={props.inMotion} obstacles={props.obstacles} soloLightId={props.soloLightId} />
        </Group>
      </Layer>
      <Layer listening={false} ref={drawWithPage}>
        <Group {...inMetres}>
          {things.map((thing) => !lifted.has(thing) && <ThingShape key={keyText(thing.key)} {...props} thing={thing} />)}
          {view === 'floor' && <SubjectT palette={palette} />}
        </Group>
        {things.map((thing) => !lifted.has(thing) && <PointAt key={keyText(thing.key)} {...props} thing={thing} />)}
      </Layer>
      <Layer listening={false} ref={drawWithPage}>
        <Group {...inMetres}>
          {things.map((thing) => lifted.has(thing) && <ThingShape key={keyText(thing.key)} {...props} thing={thing} />)}
          {props.heldByOthers.map((thing) => <OthersShape key={keyText(thing.key)} thing={thing} view={view} palette={palette} />)}
        </Group>
        {things.map((thing) => lifted.has(thing) && <PointAt key={keyText(thing.key)} {...props} thing={thing} />)}
        {chosen !== undefined && <HandleShapes thing={chosen} view={view} transform={transform} palette={palette} mayEdit={mayEdit} />}
      </Layer>
    </Stage>
  )
})

/**
 * A changed layer is drawn before the page is shown again, with the tapes and numbers that changed beside it: left to
 * itself it would ask for a screen of its own after that one.
 */
function drawWithPage(layer: Konva.Layer | null): void {
  if (layer === null) return
  let isAsked = false
  layer.batchDraw = () => {
    if (!isAsked) {
      isAsked = true
      queueMicrotask(() => {
        isAsked = false
        if (layer.getStage() !== null) layer.draw()
      })
    }
    return layer
  }
}

/** Soft light gains nothing from the finer pixels of a dense screen, and costs a quarter without them. */
function drawAtScreenPixels(layer: Konva.Layer | null): void {
  drawWithPage(layer)
  layer?.getCanvas().setPixelRatio(1)
}

const Throws = memo(function Throws({ plan, look, prediction, planes, inMotion, obstacles, soloLightId }: Thrown & Pick<FloorCanvasProps, 'planes' | 'inMotion' | 'obstacles' | 'soloLightId'>) {
  return Object.entries(look.lights).map(([id, light]) => {
    const predicted = prediction.lights.find((one) => one.id === id)
    return (
      <ThrowImage
        key={id}
        id={id}
        light={light}
        modifier={modifierOf(plan, light)}
        planes={planes}
        inMotion={inMotion}
        obstacles={obstacles}
        served={servedPlace(prediction, look, id)}
        levelStops={toHundredths(predicted?.level.stops ?? null)}
        colour={predicted?.gel.onWhite ?? '#ffffff'}
        shown={light.on && (soloLightId === null || soloLightId === id)}
      />
    )
  })
})

const AT_THE_T: Vector = [0, 0, 1.5]

function servedPlace(prediction: Prediction, look: Look, lightId: string): Vector {
  const serves = look.lights[lightId]?.serves
  return prediction.areas.find((area) => area.id === serves)?.place ?? AT_THE_T
}

/** Finer steps cannot be seen and would paint the throw anew for nothing. */
function toHundredths(stops: number | null): number | null {
  return stops === null ? null : Math.round(stops * 100) / 100
}

/** Drawn in pixels, over what is drawn in metres. */
function PointAt({ thing, view, transform, palette, selected }: FloorCanvasProps & { readonly thing: Thing }) {
  return thing.key.kind === 'point' && <PointShape thing={thing} view={view} transform={transform} palette={palette} marked={sameThing(thing.key, selected)} />
}

function ThingShape({ thing, plan, look, prediction, view, palette, transform, selected }: FloorCanvasProps & { readonly thing: Thing }) {
  const marked = sameThing(thing.key, selected)
  const { key } = thing
  switch (key.kind) {
    case 'light': {
      const light = look.lights[key.id]
      if (light === undefined) return null
      const gel = prediction.lights.find((one) => one.id === key.id)?.gel
      return <LightShape thing={thing} view={view} palette={palette} gelColour={gel?.onWhite ?? palette.ink} on={light.on} marked={marked} />
    }
    case 'piece': {
      const piece = look.pieces[key.id]
      if (piece === undefined) return null
      return <PieceShape thing={thing} piece={piece} view={view} palette={palette} pixelsPerMetre={transform.pixelsPerMetre} marked={marked} />
    }
    case 'camera':
      return <CameraShape thing={thing} camera={look.camera} view={view} palette={palette} reachMetres={reachOf(plan, look)} marked={marked} />
    case 'subject':
      return <SubjectShape thing={thing} subject={look.subject} view={view} palette={palette} marked={marked} />
    case 'backdrop':
      return <BackdropShape backdrop={look.backdrop} view={view} palette={palette} marked={marked} />
    case 'point':
      return null
  }
}

/** As far as the camera sees: to the paper, or to the rear wall. */
function reachOf(plan: Plan, look: Look): number {
  return look.backdrop.kind === 'paper' ? look.backdrop.yMetres : roomBox(plan.room).rear
}
