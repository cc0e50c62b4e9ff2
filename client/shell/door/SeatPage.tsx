import { pictureDesk } from '../../frame/picture/pictureDesk.ts'
import { useEffect, useState } from 'react'
import { createPredictor } from '../../../shared-core/predict/predict.ts'
import { whoAmI } from '../../connection/api.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import { beginFirstPicture } from '../../frame/picture/firstPicture.ts'
import { openNotes } from '../../notes/engine/openNotes.ts'
import type { NotesStore } from '../../notes/engine/notesStore.ts'
import { NotesContext } from '../../notes/useNotes.ts'
import { openRig, type RigStore } from '../../rig/engine/openRig.ts'
import { RigContext } from '../../rig/useRig.ts'
import type { BoardStore } from '../../session/boardStore.ts'
import { firstLookId } from '../../session/looksInOrder.ts'
import { openBoard } from '../../session/openBoard.ts'
import { remembered } from '../../session/remembered.ts'
import { BoardContext } from '../../session/useBoard.ts'
import { SeatContext } from '../../session/useSeat.ts'
import { fontHere } from '../../theme/fontHere.ts'
import { ask } from '../../session/pageStore.ts'
import { BoardPage } from '../BoardPage.tsx'
import { WaitingPage } from './WaitingPage.tsx'

/** A seat's page: finds out whose it is, opens its board, and says how things stand until there is one. */
export function SeatPage({ seatId, seatTaken }: { readonly seatId: string; readonly seatTaken: SeatInfo | null }) {
  const [seat, setSeat] = useState(seatTaken)
  const [refused, setRefused] = useState<string | null>(null)

  useEffect(() => {
    if (seat !== null) return
    let here = true
    void findSeat(seatId).then((found) => {
      if (!here) return
      if (typeof found === 'string') setRefused(found)
      else setSeat(found)
    })
    return () => {
      here = false
    }
  }, [seatId, seat])

  if (refused !== null) return <TurnedAway words={refused} />
  return seat === null ? <WaitingPage words="Finding your seat" /> : <SeatedBoard seat={seat} />
}

/** Whose seat this is: as the relay says, or as this device remembers while the relay does not answer. */
async function findSeat(seatId: string): Promise<SeatInfo | string> {
  const answer = await whoAmI(seatId)
  if (answer.ok) return answer.value
  const known = remembered.seats().find((one) => one.seatId === seatId)
  if (known !== undefined && (answer.status === null || answer.status >= 500)) return known
  return answer.words
}

/** A hand moves on the board as fast as the Frame follows it, so that neither is drawn for nothing. */
function keepStepWithPicture(callback: () => void): void {
  const ask = () => requestAnimationFrame(callback)
  const desk = pictureDesk()
  if (desk === null) ask()
  else desk.whenRoomForHand(ask)
}

function SeatedBoard({ seat }: { readonly seat: SeatInfo }) {
  const [opened, setOpened] = useState<{ readonly board: BoardStore; readonly notes: NotesStore; readonly rig: RigStore } | null>(null)
  const [waiting, setWaiting] = useState<{ readonly words: string; readonly turnedAway: boolean }>({ words: 'Joining', turnedAway: false })

  useEffect(
    () => {
      let parts: { readonly notes: NotesStore; readonly rig: RigStore } | null = null
      const leave = openBoard(seat, createPredictor(), {
        onNextFrame: keepStepWithPicture,
        onPlan: (plan) => beginFirstPicture(plan, firstLookId(plan)),
        onBoard: (board) => {
          const joined = parts = { notes: openNotes(seat, board), rig: openRig(seat, board.say) }
          void fontHere().then(() => setOpened({ board, ...joined }))
        },
        onWaiting: (words, turnedAway) => setWaiting({ words, turnedAway }),
        onRefusedPlan: (plan, reason) => ask({ kind: 'refused', plan, reason }),
      })
      return () => {
        parts?.notes.close()
        parts?.rig.close()
        leave()
      }
    },
    [seat],
  )

  if (opened === null) return waiting.turnedAway ? <TurnedAway words={waiting.words} /> : <WaitingPage words={waiting.words} />
  return (
    <SeatContext value={seat}>
      <BoardContext value={opened.board}>
        <NotesContext value={opened.notes}>
          <RigContext value={opened.rig}>
            <BoardPage />
          </RigContext>
        </NotesContext>
      </BoardContext>
    </SeatContext>
  )
}

function TurnedAway({ words }: { readonly words: string }) {
  return (
    <WaitingPage words={words}>
      <button type="button" className="button button-lined" onClick={() => location.reload()}>
        Try again
      </button>
      <a className="button" href="/">
        To the first page
      </a>
    </WaitingPage>
  )
}
