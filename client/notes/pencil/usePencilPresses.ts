import { useEffect } from 'react'
import type { Pin } from '../../../shared-core/notes/pin.ts'
import { useBoardStore } from '../../session/useBoard.ts'
import type { Board } from '../../session/board.ts'
import type { PressedAt } from './PencilSurface.tsx'
import { beginNote, pencilStore, setPencil, usePencil } from './pencilStore.ts'

/** What can be pinned to, wherever on the page it is shown. */
const PINNABLE = '[data-pin], .ladder [data-light], .ladder [data-area], .area-marks [data-area], .floor-tapes [data-thing]'
/** Presses here are the pencil's own, and never pin. */
const OWN = '.note-mark, [data-pencil-own], .pencil-surface'

/**
 * While the pencil is on, a press on a light, a gel, an area or a piece pins there: it is taken before the thing itself
 * hears of it, so that nothing moves and nothing is picked.
 */
export function usePencilPresses(): void {
  const isOn = usePencil((state) => state.isOn)
  const board = useBoardStore()
  useEffect(() => {
    if (!isOn) return

    function pinnable(event: Event): Element | null {
      const target = event.target instanceof Element ? event.target : null
      return target === null || target.closest(OWN) !== null ? null : target.closest(PINNABLE)
    }
    function takeAway(event: Event): void {
      if (pinnable(event) === null) return
      event.stopPropagation()
    }
    function pinAt(element: Element, at: PressedAt): void {
      const begun = pinOf(element, board.getState())
      if (begun !== null) beginNote({ lookId: board.getState().lookId, ...begun, ...at })
    }
    function onClick(event: MouseEvent): void {
      const element = pinnable(event)
      if (element === null) return
      event.stopPropagation()
      event.preventDefault()
      const isFromKeys = event.detail === 0
      pinAt(isFromKeys ? element : markMeant(element, event), isFromKeys ? besideOf(element) : { clientX: event.clientX, clientY: event.clientY, byKeys: false })
    }
    function onKeyDown(event: KeyboardEvent): void {
      if (event.key === 'Escape' && pencilStore.getState().begun === null && !isTyping(event.target)) {
        event.stopPropagation()
        return setPencil(false)
      }
      const element = event.key === 'Enter' || event.key === ' ' ? pinnable(event) : null
      if (element === null || element !== document.activeElement) return
      event.stopPropagation()
      event.preventDefault()
      pinAt(element, besideOf(element))
    }

    const kept = ['pointerdown', 'pointerup', 'mousedown', 'touchstart', 'dblclick'] as const
    for (const kind of kept) addEventListener(kind, takeAway, true)
    addEventListener('click', onClick, true)
    addEventListener('keydown', onKeyDown, true)
    return () => {
      for (const kind of kept) removeEventListener(kind, takeAway, true)
      removeEventListener('click', onClick, true)
      removeEventListener('keydown', onKeyDown, true)
    }
  }, [isOn, board])
}

/** Marks of areas overlap under a finger: the one whose middle is nearest is meant, whichever lies on top. */
function markMeant(pressed: Element, { clientX, clientY }: MouseEvent): Element {
  const marks = pressed.closest('.area-marks')?.querySelectorAll('.area-mark-of:not([data-behind="true"]) > [data-area]') ?? []
  const away = (mark: Element): number => {
    const { left, top, width, height } = mark.getBoundingClientRect()
    return (left + width / 2 - clientX) ** 2 + (top + height / 2 - clientY) ** 2
  }
  return [...marks].reduce((nearest, mark) => (away(mark) < away(nearest) ? mark : nearest), pressed)
}

function besideOf(element: Element): PressedAt {
  const box = element.getBoundingClientRect()
  return { clientX: box.right, clientY: box.top + box.height / 2, byKeys: true }
}

/** A list or field that shuts or empties itself by Escape keeps that key. */
function isTyping(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('input, textarea, select, [role="dialog"], [role="menu"], [role="listbox"]') !== null
}

/** What a press on an element pins to, with the colour that stands there. */
function pinOf(element: Element, { prediction, lookId, shown }: Board): { readonly pin: Pin; readonly colour: string | null } | null {
  const data = (element as HTMLElement | SVGElement).dataset
  const [kind, id, lightId] = (data['pin'] ?? data['thing'] ?? '').split(':')
  const named = data['light'] ?? (kind === 'light' ? id : undefined)
  if (named !== undefined) return { pin: { on: 'light', lightId: named }, colour: null }
  const area = prediction.areas.find((one) => one.id === (data['area'] ?? (kind === 'point' ? id : undefined)))
  if (area !== undefined) {
    const { xyz: [x, y, z], display } = area.colour
    return { pin: { on: 'colour', areaId: area.id, xyz: [x, y, z], hex: display }, colour: null }
  }
  if (kind === 'gel' && id !== undefined) {
    const hex = prediction.lights.find((light) => light.id === lightId)?.gel.onWhite ?? null
    return { pin: { on: 'gel', gelId: id, lightId: lightId ?? null }, colour: hex }
  }
  if (kind === 'piece' && id !== undefined) return { pin: { on: 'piece', pieceId: id }, colour: null }
  const { subject } = shown.looks[lookId] ?? {}
  if (kind === 'subject' && subject) return { pin: { on: 'floor', xMetres: subject.xMetres, yMetres: subject.yMetres }, colour: null }
  return { pin: { on: 'look' }, colour: null }
}
