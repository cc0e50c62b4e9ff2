import { useEffect } from 'react'
import { readPrintMark } from '../../shared-core/stands/printMark.ts'
import { ask } from '../session/pageStore.ts'
import { remembered } from '../session/remembered.ts'
import { WaitingPage } from '../shell/door/WaitingPage.tsx'

/** Where a scan mark leads: to this device's own seat in that job, or to words on how to get one. */
export function ScannedPage({ onSeat }: { readonly onSeat: (seatId: string) => void }) {
  const mark = readPrintMark(location)
  const seats = remembered.seats()
  const seatId = seats.find(({ jobId }) => jobId === mark?.jobId)?.seatId
  useEffect(() => {
    if (mark === null || seatId === undefined) return
    ask({ kind: 'print-differs', mark })
    onSeat(seatId)
    // eslint-disable-next-line react-hooks/exhaustive-deps -- the address is read once
  }, [])
  if (seatId !== undefined) return <WaitingPage words="Opening" />
  const words = mark === null
    ? 'This mark cannot be read as one of a Halfstop print. Scan another corner of the page, squarely.'
    : seats.length === 0
      ? 'This print belongs to a job that this device has not joined. Open the link you were given for it, then scan again.'
      : 'This print belongs to another job than those this device has joined. Build nothing from it here; if it is yours, open the link you were given for it, then scan again.'
  return (
    <WaitingPage words={words}>
      <a className="button button-lined" href="/">To the first page</a>
    </WaitingPage>
  )
}
