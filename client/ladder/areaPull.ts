import type { Want } from '../../shared-core/ask/want.ts'
import type { AskDesk } from '../ask/askDesk.ts'
import type { AnswerFound } from '../ask/askOrders.ts'
import type { Board } from '../session/board.ts'
import { BOTTOM_STOPS, TOP_STOPS } from './scale.ts'

const SLOT = 'ladder-hand'

/** An area's level in a hand. */
export interface PulledArea {
  readonly areaId: string
  /** What it reads without the hand; null in the dark. */
  readonly nowStops: number | null
  readonly wantedStops: number
  /** What gives it, or what stands in the way, in words; empty until the first answer. */
  readonly words: string
}

export interface AreaPullParts {
  readonly board: () => Pick<Board, 'plan' | 'lookId' | 'prediction' | 'hold'>
  readonly desk: () => Pick<AskDesk, 'order' | 'cancel'>
  /** All that is wanted of the look, with this among it. */
  readonly wantsWith: (lookId: string, want: Want) => readonly Want[]
  /** Called with what is in the hand, whenever that changes. */
  readonly changed: (pulled: PulledArea | null) => void
}

/**
 * A hand that pulls an area to a level: the powers that give it are asked for beside the page and laid over the board as
 * they come. One question is open at a time, and the next is always about where the hand is by then: a hand faster than
 * the answers skips levels and is never kept waiting.
 */
export class AreaPull {
  private pulled: PulledArea | null = null
  private askedStops: number | null = null

  constructor(private readonly parts: AreaPullParts) {}

  /** @param stops from the level the area had when it was taken */
  pull(areaId: string, stops: number): void {
    const taken = this.take(areaId)
    this.want({ ...taken, wantedStops: toTenth(onLadder((taken.nowStops ?? BOTTOM_STOPS) + stops)) })
  }

  /** @param stops from where it has been pulled to already */
  nudge(areaId: string, stops: number): void {
    const taken = this.take(areaId)
    this.want({ ...taken, wantedStops: onLadder(taken.wantedStops + stops) })
  }

  /** Lets go; what was found stays laid over the board. Returns what was in the hand. */
  letGo(): PulledArea | null {
    const last = this.pulled
    if (last === null) return null
    this.parts.desk().cancel(SLOT)
    this.askedStops = null
    this.show(null)
    return last
  }

  /** Lets go and puts back; false when nothing was in hand. */
  cancel(): boolean {
    if (this.letGo() === null) return false
    this.parts.board().hold(null)
    return true
  }

  private take(areaId: string): PulledArea {
    if (this.pulled?.areaId === areaId) return this.pulled
    this.cancel()
    const nowStops = this.parts.board().prediction.areas.find(({ id }) => id === areaId)?.meter.stops ?? null
    return { areaId, nowStops, wantedStops: toTenth(onLadder(nowStops ?? BOTTOM_STOPS)), words: '' }
  }

  private want(pulled: PulledArea): void {
    this.show(pulled)
    if (this.askedStops === null) this.ask(pulled)
  }

  private ask({ areaId, wantedStops }: PulledArea): void {
    const { plan, lookId } = this.parts.board()
    this.askedStops = wantedStops
    const wants = this.parts.wantsWith(lookId, { kind: 'area-level', areaId, stops: wantedStops })
    this.parts.desk().order<'ask'>({ slot: SLOT, kind: 'ask', plan, lookId, wants, isPowersOnly: true, isUnderHand: true }, {
      answered: (found) => this.answered(found),
      failed: (words) => {
        this.askedStops = null
        if (this.pulled) this.show({ ...this.pulled, words })
      },
    })
  }

  private answered({ ways, limit }: AnswerFound): void {
    const asked = this.askedStops
    this.askedStops = null
    const [powers] = ways
    if (this.pulled === null || !powers) return
    this.show({ ...this.pulled, words: limit?.words ?? powers.title })
    this.parts.board().hold(powers.edit)
    if (this.pulled.wantedStops !== asked) this.ask(this.pulled)
  }

  private show(pulled: PulledArea | null): void {
    this.pulled = pulled
    this.parts.changed(pulled)
  }
}

function onLadder(stops: number): number {
  return Math.min(TOP_STOPS, Math.max(BOTTOM_STOPS, stops))
}

/** A meter's last digit. */
function toTenth(stops: number): number {
  return Math.round(stops * 10) / 10
}
