import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { movePen, type Answer } from '../connection/api.ts'
import { openLink } from '../connection/link.ts'
import { markUnsent, mayHoldUnsent } from '../connection/localCopy.ts'
import { viewOf, type Connection } from '../connection/machine.ts'
import type { Refusal } from '../connection/refusal.ts'
import type { SeatInfo } from '../connection/seat.ts'
import { createBoardStore, type BoardStore } from './boardStore.ts'
import { remembered } from './remembered.ts'
import { createSharedCompany } from './sharedCompany.ts'
import { createSharedPlan } from './sharedPlan.ts'

const penGone: Refusal = { code: 'no-pen', words: 'The pen is no longer yours.' }

export interface OpeningBoard {
  /** Runs the callback before the next picture on the screen that a hand's move should be seen in. */
  readonly onNextFrame: (callback: () => void) => void
  /** A plan is there to show, and its board is about to be made. */
  readonly onPlan: (plan: Plan) => void
  readonly onBoard: (board: BoardStore) => void
  /** How things stand while there is no plan to show yet. */
  readonly onWaiting: (words: string, turnedAway: boolean) => void
  /** Changes the relay will never take, as the plan they made. */
  readonly onRefusedPlan: (plan: Plan, words: string) => void
}

/**
 * Joins the job of a seat, and gives a board as soon as there is a plan to show: from this device's own copy, or from
 * the relay. Returns how to leave.
 */
export function openBoard(
  seat: SeatInfo,
  predict: (plan: Plan, lookId: string) => Prediction,
  opening: OpeningBoard,
): () => void {
  let board: BoardStore | null = null
  const say = (words: string) => board?.say(words)

  const link = openLink(seat.seatId, {
    onConnection: showConnection,
    onDocument: ({ doc, awareness }) => {
      plan.moveTo(doc)
      company.moveTo(awareness)
    },
    onRefusal: ({ words }) => say(`Not taken. ${words}`),
    onLost: ({ words }, lost) => {
      const refused = readPlanFromDocument(lost).plan
      if (refused !== null) opening.onRefusedPlan(refused, words)
    },
  })
  const plan = createSharedPlan(link.shared().doc, seat.seatId, {
    say,
    // Only a client's right to write can end before what they wrote has reached the relay.
    onWrite: () => seat.role === 'client' && markUnsent(seat.seatId, true),
  })
  const company = createSharedCompany(link.shared().awareness, seat, {
    handPenTo: (toSeatId) => void movePen(seat.seatId, toSeatId).then(sayWhy),
    takePenBack: () => void movePen(seat.seatId, null).then(sayWhy),
  })

  function showConnection(connection: Connection): void {
    if (connection.state === 'live') giveUpUnsent()
    if (board !== null) return board.showConnection(viewOf(connection))
    opening.onWaiting(viewOf(connection).words, connection.state === 'turned-away')
    openWhenReadable()
  }

  function sayWhy(answer: Answer<unknown>): void {
    if (!answer.ok) say(answer.words)
  }

  function openWhenReadable(): void {
    const { plan: first, repairs } = plan.readable()
    if (board !== null) return
    if (first === null) {
      if (repairs.length > 0) opening.onWaiting(repairs.join(' '), false)
      else if (link.connection().state === 'live') void beginEmptyJob()
      return
    }
    opening.onPlan(first)
    board = createBoardStore({
      plan, company, predict, role: seat.role, connection: viewOf(link.connection()),
      onNextFrame: opening.onNextFrame,
      units: remembered.units(), keepUnits: remembered.keepUnits,
    })
    remembered.keepSeat({ ...seat, title: first.title })
    opening.onBoard(board)
  }

  /** A job started from nothing, by a program: its photographer begins it with the usual room and kit. */
  async function beginEmptyJob(): Promise<void> {
    if (seat.role !== 'photographer') return opening.onWaiting('This job holds no plan yet. It begins when its photographer comes in.', false)
    const { newPlan } = await import('./newPlan.ts')
    const { doc } = link.shared()
    if (readPlanFromDocument(doc).plan === null) writePlanToDocument(doc, newPlan('New job'))
  }

  function showKept(): void {
    const { notKept } = company.relayWord()
    if (link.connection().notKept !== null && notKept === null) say('Changes are being kept again')
    link.showKept(notKept)
  }

  function giveUpUnsent(): void {
    // The relay asks nobody for changes who may not write; what such a one still holds from before has to be given up here.
    const mayWrite = seat.role !== 'client' || company.relayWord().pen?.seatId === seat.seatId
    const settled = link.connection().state === 'live' && company.relayHasSpoken()
    if (settled && !mayWrite && mayHoldUnsent(seat.seatId)) link.startOver(penGone)
  }

  const stops = [
    plan.onChange(openWhenReadable),
    company.onChange(showKept),
    company.onChange(giveUpUnsent),
  ]
  openWhenReadable()

  return () => {
    stops.forEach((stop) => stop())
    board?.close()
    plan.close()
    company.close()
    link.close()
  }
}
