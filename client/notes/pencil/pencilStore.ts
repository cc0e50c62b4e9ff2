import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import type { Pin } from '../../../shared-core/notes/pin.ts'
import type { ReadUpTo } from './readNotes.ts'

/** A note being written. */
export interface NoteBegun {
  readonly lookId: string
  readonly pin: Pin
  /** The colour that stands there as it is written, `#rrggbb`. */
  readonly colour: string | null
  /** Pressed by a key: then the focus goes back where it was. */
  readonly byKeys: boolean
  /** Where on the page it was pressed, in pixels. */
  readonly clientX: number
  readonly clientY: number
}

interface PencilState {
  /** A press pins instead of doing what it always does. */
  readonly isOn: boolean
  readonly listShown: boolean
  /** The thread that is read; null for the list. */
  readonly openId: string | null
  readonly begun: NoteBegun | null
  /** What colour the place of each note shows now, by its id; what is not there cannot be judged. */
  readonly coloursNow: Readonly<Record<string, string>>
  /** Notes whose place the camera does not see: behind another part of the subject, or outside the Frame. */
  readonly hiddenIds: ReadonlySet<string>
  /** Points of strokes that it does not see: the stroke's id and the point's place in it. */
  readonly hiddenPoints: ReadonlySet<string>
  /** What was read in this page, by seat; before anything was, as the device remembers it. */
  readonly readOf: Readonly<Record<string, ReadUpTo>>
}

/** What this page does with the pencil: it belongs to no plan, and nobody else sees it. */
export const pencilStore = createStore<PencilState>()(() => ({ isOn: false, listShown: false, openId: null, begun: null, coloursNow: {}, hiddenIds: new Set(), hiddenPoints: new Set(), readOf: {} }))

export function usePencil<Part>(selector: (state: PencilState) => Part): Part {
  return useStore(pencilStore, selector)
}

export function setPencil(isOn: boolean): void {
  pencilStore.setState({ isOn, ...(isOn ? {} : { begun: null }) })
}

export function beginNote(begun: NoteBegun): void {
  pencilStore.setState({ begun })
}

export function leaveNote(): void {
  pencilStore.setState({ begun: null })
}

export function showNotes(): void {
  pencilStore.setState({ listShown: true, openId: null })
}

export function hideNotes(): void {
  pencilStore.setState({ listShown: false, openId: null })
}

/** @param openId null goes back to the list */
export function readThread(openId: string | null): void {
  pencilStore.setState({ listShown: true, openId })
}
