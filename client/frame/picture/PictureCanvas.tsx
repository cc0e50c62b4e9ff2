import { useEffect, useId, useRef, useState, type ReactNode } from 'react'
import { useBoard, useBoardAtOnce } from '../../session/useBoard.ts'
import type { Tint } from '../../../shared-core/picture/leaderView.ts'
import type { PictureView } from '../../../shared-core/picture/views.ts'
import { CanvasPaper } from './canvasPaper.ts'
import { planInFrame } from '../before/planInFrame.ts'
import { displaySpace } from './displaySpace.ts'
import { firstPictureOf } from './firstPicture.ts'
import { handSize } from './handSize.ts'
import { pictureDesk } from './pictureDesk.ts'
import type { DrawnPicture, EyesPart, PictureKind, PictureLetter } from './pictureOrders.ts'
import type { ShownPicture } from './reading.ts'

export interface PictureCanvasProps {
  readonly kind: PictureKind
  readonly soloLightId: string | null
  readonly widthPixels: number
  readonly heightPixels: number
  /** What the picture shows, for those who cannot see it; empty beside words that already say it. */
  readonly description: string
  /** A new one fades to the new picture (a light lifted out, seen alone); the same one follows a hand at once. */
  readonly fadeKey: string
  readonly view?: PictureView
  /** Of each light by id, for the view of who lights what. */
  readonly tints?: Readonly<Record<string, Tint>> | undefined
  /** Only the part of the Frame around the eyes. */
  readonly eyes?: EyesPart
  /** Something is being read off it: then also a picture under a hand is told. */
  readonly isRead?: boolean
  /** Told the linear picture behind what is shown, for readings. */
  readonly onLinear?: (shown: ShownPicture) => void
  /** Told what its parts are, of a view that says so. */
  readonly onLetters?: (letters: readonly PictureLetter[]) => void
  /** Told in words why there is no picture. */
  readonly onTrouble?: (words: string) => void
  /** Shown until the first picture is there, and where none can be drawn. */
  readonly children: ReactNode
}

/** Nothing yet, the picture at its size but with light between few points, or the picture. */
type Drawn = 'waiting' | 'sketched' | 'drawn'

/** How a picture is drawn: small while a hand moves something, at its size for an empty easel, or in full. */
type Haste = 'hand' | 'sketch' | 'full'

/** A hand that rests this long gets the picture in full. */
const REST_MS = 120

/** The predicted picture, drawn by the worker and laid on a canvas as it comes. */
export function PictureCanvas({ kind, soloLightId, widthPixels, heightPixels, description, fadeKey, view = 'picture', tints, eyes, isRead = false, onLinear, onLetters, onTrouble, children }: PictureCanvasProps) {
  // The Frame keeps up with a hand; the small pictures wait until it rests.
  const useIts = kind === 'frame' ? useBoardAtOnce : useBoard
  const shown = useIts((board) => (kind === 'single' ? board.shown : planInFrame(board)))
  const inHand = useIts((board) => board.shown !== board.plan && planInFrame(board) === board.shown)
  const lookId = useIts((board) => board.lookId)
  const slot = useId()
  const canvas = useRef<HTMLCanvasElement>(null)
  const paper = useRef<CanvasPaper | null>(null)
  const lastFade = useRef(fadeKey)
  const readNow = useRef(isRead)
  useEffect(() => {
    readNow.current = isRead
  }, [isRead])
  const [drawn, setDrawn] = useState<Drawn>('waiting')

  useEffect(() => {
    const desk = pictureDesk()
    if (desk === null) return
    const show = (picture: DrawnPicture, how: Haste) => {
      // A sketch is for an empty easel only: it never goes over a picture.
      if (how === 'sketch' && paper.current !== null) return
      if (picture.rgba === null) {
        onTrouble?.(picture.trouble)
        return setDrawn('waiting')
      }
      if (picture.linear !== null) onLinear?.({ ...picture, linear: picture.linear, plan: shown, lookId, isFull: how === 'full' })
      onLetters?.(picture.letters)
      const fades = lastFade.current !== fadeKey
      lastFade.current = fadeKey
      paper.current ??= paperOf(canvas.current)
      paper.current?.lay(imageOf(picture.rgba, picture), fades && !isCalm())
      setDrawn((before) => (how !== 'full' && before !== 'drawn' ? 'sketched' : 'drawn'))
    }
    const order = (how: Haste) => {
      const isSmall = how === 'hand'
      desk.order({
        slot: how === 'sketch' ? sketchSlot(slot) : slot,
        plan: shown, lookId, soloLightId, coarse: how !== 'full',
        kind: isSmall ? 'hand' : kind,
        ...(isSmall ? handSize(widthPixels, heightPixels) : { width: widthPixels, height: heightPixels }),
        view, isRead: onLinear !== undefined && (!isSmall || readNow.current), space: displaySpace(), ...(eyes && { eyes }), ...(tints && { tints }),
      }, (picture) => show(picture, how))
    }
    if (!inHand) {
      // Nobody should look at an empty easel for longer than it takes.
      if (kind === 'frame' && paper.current === null) sketch()
      return order('full')
    }
    function sketch(): void {
      const begun = firstPictureOf(shown, lookId)
      if (begun === null) return order('sketch')
      void begun.then((picture) => show(picture, 'sketch'))
    }
    // The small pictures can wait until the hand rests; the big one may not.
    if (kind === 'frame') order('hand')
    const rested = setTimeout(() => order('full'), REST_MS)
    return () => clearTimeout(rested)
  }, [slot, kind, shown, inHand, lookId, widthPixels, heightPixels, soloLightId, fadeKey, view, tints, eyes, onLinear, onLetters, onTrouble])

  useEffect(() => () => {
    pictureDesk()?.forget(slot)
    pictureDesk()?.forget(sketchSlot(slot))
  }, [slot])

  return (
    <>
      {drawn === 'waiting' && children}
      <canvas
        ref={canvas}
        className="form-picture"
        data-picture={drawn}
        hidden={drawn === 'waiting'}
        {...(description === '' || drawn === 'waiting' ? { 'aria-hidden': true } : { role: 'img', 'aria-label': description })}
      />
    </>
  )
}

/** Of its own, so that sketch and picture can wait one behind the other. */
function sketchSlot(slot: string): string {
  return `${slot} sketch`
}

function paperOf(canvas: HTMLCanvasElement | null): CanvasPaper | null {
  const context = canvas?.getContext('2d', { colorSpace: displaySpace(), willReadFrequently: true })
  return context ? new CanvasPaper(context) : null
}

function imageOf(rgba: Uint8ClampedArray<ArrayBuffer>, { width, height }: DrawnPicture): ImageData {
  return new ImageData(rgba, width, height, { colorSpace: displaySpace() })
}

function isCalm(): boolean {
  return matchMedia('(prefers-reduced-motion: reduce)').matches
}
