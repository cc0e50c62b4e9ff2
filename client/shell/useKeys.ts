import { useEffect } from 'react'
import { openAsk } from '../ask/askPanelStore.ts'
import { hideNotes, pencilStore, setPencil, showNotes } from '../notes/pencil/pencilStore.ts'
import type { Board } from '../session/board.ts'
import { looksInOrder } from '../session/looksInOrder.ts'
import { useBoardStore } from '../session/useBoard.ts'
import { ask, pageStore, setSheet } from '../session/pageStore.ts'
import { saveJobFile } from './dialogs/jobFile.ts'
import { shortcutOf, type Shortcut } from './shortcuts.ts'

/** How long a light's key is held before it is seen alone: past a tap, short of a wait. */
const holdMs = 250

/** Which keys a page listens to. */
type Heard = (does: Shortcut['does']) => boolean

export const allKeys: Heard = () => true
/** Of a page on which nothing but the picture is seen, and nothing can be changed. */
export const plainKeys: Heard = (does) => ['before', 'pencil', 'notes', 'let-go', 'next-look', 'previous-look'].includes(does)

/** The board's keys, wherever the focus is, unless it is somewhere that takes the key itself. */
export function useKeys(isHeard: Heard): void {
  const store = useBoardStore()
  useEffect(() => {
    let aloneTimer: ReturnType<typeof setTimeout> | undefined
    let heldKey: string | null = null

    function letGoOfKey(): void {
      clearTimeout(aloneTimer)
      if (heldKey !== null && store.getState().soloLightId !== null) store.getState().solo(null)
      store.getState().seeBefore(false)
      heldKey = null
    }

    function onKeyDown(event: KeyboardEvent): void {
      if (event.defaultPrevented || pageStore.getState().asking !== null) return
      const command = event.ctrlKey || event.metaKey
      const shortcut = shortcutOf({ key: event.key, command, shift: event.shiftKey, alt: event.altKey })
      if (shortcut === null || !isHeard(shortcut.does) || takesKeys(event.target, command, event.key)) return
      if (shortcut.does !== 'let-go') event.preventDefault()
      if (event.repeat && (shortcut.does === 'light' || shortcut.does === 'before')) return
      if (shortcut.does === 'light') {
        letGoOfKey()
        const lightId = pickLight(store.getState(), shortcut.letter)
        if (lightId === null) return
        heldKey = event.key
        aloneTimer = setTimeout(() => store.getState().solo(lightId), holdMs)
      } else if (shortcut.does === 'before') {
        letGoOfKey()
        heldKey = event.key
        store.getState().seeBefore(true)
      } else {
        perform(store.getState(), shortcut.does)
      }
    }

    function onKeyUp(event: KeyboardEvent): void {
      if (event.key === heldKey) letGoOfKey()
    }

    addEventListener('keydown', onKeyDown)
    addEventListener('keyup', onKeyUp)
    addEventListener('blur', letGoOfKey)
    return () => {
      letGoOfKey()
      removeEventListener('keydown', onKeyDown)
      removeEventListener('keyup', onKeyUp)
      removeEventListener('blur', letGoOfKey)
    }
  }, [store, isHeard])
}

function perform(board: Board, does: Exclude<Shortcut['does'], 'light' | 'before'>): void {
  switch (does) {
    case 'undo':
      return board.undo()
    case 'redo':
      return board.redo()
    case 'save':
      return saveJobFile(board.plan)
    case 'list':
      return ask({ kind: 'shortcuts' })
    case 'all-lights':
      return board.solo(null)
    case 'details':
      return setSheet('low')
    case 'ask':
      return board.mayEdit ? openAsk() : undefined
    case 'pencil':
      // On a set with so many lights the letter is a light's.
      return pickLight(board, 'N') === null ? takePencil() : undefined
    case 'notes':
      return pencilStore.getState().listShown ? hideNotes() : showNotes()
    case 'let-go':
      return letGo(board)
    case 'next-look':
      return stepLook(board, 1)
    case 'previous-look':
      return stepLook(board, -1)
  }
}

/** Taken by a key, it is ready for the keys. */
function takePencil(): void {
  const isOn = !pencilStore.getState().isOn
  setPencil(isOn)
  if (isOn) requestAnimationFrame(() => document.querySelector<HTMLElement>('.frame-print .pencil-surface')?.focus({ preventScroll: true }))
}

/** One press puts the sheet away, the next lets go of what is picked. */
function letGo(board: Board): void {
  if (pencilStore.getState().listShown) hideNotes()
  else if (pageStore.getState().sheet === 'shut') board.select(null)
  else setSheet('shut')
}

function pickLight(board: Board, letter: string): string | null {
  const light = board.prediction.lights.find((one) => one.letter === letter)
  if (light === undefined) return null
  board.select({ kind: 'light', id: light.id })
  return light.id
}

function stepLook(board: Board, by: 1 | -1): void {
  const lookIds = looksInOrder(board.plan).map(([lookId]) => lookId)
  const next = lookIds[lookIds.indexOf(board.lookId) + by]
  if (next !== undefined) board.showLook(next)
}

/** Whether the focused thing has its own use for the key: typing, a list's letters, a button's space. */
function takesKeys(target: EventTarget | null, command: boolean, key: string): boolean {
  if (!(target instanceof HTMLElement)) return false
  if (target.closest('[role="dialog"], [role="menu"], [role="listbox"]') !== null) return true
  const types = target.isContentEditable || target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement
  // A field in which nothing is being typed has nothing of its own to undo.
  if (types) return !(command && (key.toLowerCase() === 's' || target.dataset.idle === 'true'))
  return (key === ' ' || key === 'Enter') && target.closest('button, summary, a, [role="radio"], [role="switch"], [role="slider"]') !== null
}
