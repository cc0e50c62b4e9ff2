import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import { wantSubject } from '../../shared-core/ask/parseWants.ts'
import type { Want } from '../../shared-core/ask/want.ts'

interface AskPanelState {
  readonly isOpen: boolean
  /** How often it has been opened: each time the line begins anew. */
  readonly opening: number
  /** What stands in the line when the panel opens, to be typed over. */
  readonly firstWords: string
  /** What is wanted of each look, by its id. */
  readonly wantsOf: Readonly<Record<string, readonly Want[]>>
  /**
   * Powers found under a hand on an area's marker: being pulled, or let go of and lying over the board until the panel
   * shows them, or something else, or nothing.
   */
  readonly hand: 'none' | 'pulling' | 'let-go'
}

/** Whether and what this page asks: it belongs to no plan, and nobody else sees it. */
export const askPanelStore = createStore<AskPanelState>()(() => ({ isOpen: false, opening: 0, firstWords: '', wantsOf: {}, hand: 'none' }))

const NOTHING_WANTED: readonly Want[] = []

export function useAskPanel<Part>(selector: (state: AskPanelState) => Part): Part {
  return useStore(askPanelStore, selector)
}

/** What is wanted of a look so far. */
export function wantsOfLook(lookId: string): readonly Want[] {
  return askPanelStore.getState().wantsOf[lookId] ?? NOTHING_WANTED
}

export function useWants(lookId: string): readonly Want[] {
  return useAskPanel(({ wantsOf }) => wantsOf[lookId] ?? NOTHING_WANTED)
}

/** @param firstWords what to begin with: "nose −0.4" */
export function openAsk(firstWords = ''): void {
  askPanelStore.setState(({ opening }) => ({ isOpen: true, opening: opening + 1, firstWords }))
}

/** Opens it on what a hand let go of, with the powers it found still laid over the board. */
export function openAskFromHand(lookId: string, want: Want): void {
  addWants(lookId, [want])
  askPanelStore.setState({ isOpen: true, firstWords: '', hand: 'let-go' })
}

/** What was wanted goes with it: what nobody sees must not have a say in what a hand pulls next. */
export function shutAsk(): void {
  askPanelStore.setState({ isOpen: false, firstWords: '', wantsOf: {} })
}

/** A hand pulls an area's marker: what it finds lies over the board from now on. */
export function takeHand(): void {
  if (askPanelStore.getState().hand !== 'pulling') askPanelStore.setState({ hand: 'pulling' })
}

/** What the hand found no longer lies over the board; false when nothing did. */
export function forgetHand(): boolean {
  const wasThere = askPanelStore.getState().hand !== 'none'
  if (wasThere) askPanelStore.setState({ hand: 'none' })
  return wasThere
}

/** Wants beside those there are; of two about the same thing the new one holds. */
export function wantsWith(wants: readonly Want[], added: readonly Want[]): readonly Want[] {
  const spokenOf = new Set(added.map(wantSubject))
  return [...wants.filter((want) => !spokenOf.has(wantSubject(want))), ...added]
}

export function addWants(lookId: string, added: readonly Want[]): void {
  setWants(lookId, wantsWith(wantsOfLook(lookId), added))
}

export function removeWant(lookId: string, want: Want): void {
  setWants(lookId, wantsOfLook(lookId).filter((each) => each !== want))
}

function setWants(lookId: string, wants: readonly Want[]): void {
  askPanelStore.setState(({ wantsOf }) => ({ wantsOf: { ...wantsOf, [lookId]: wants } }))
}
