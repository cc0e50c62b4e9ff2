import { lazy, Suspense, useState } from 'react'
import type { SeatInfo } from './connection/seat.ts'
import { ScannedPage } from './print/ScannedPage.tsx'
import { readRoute, type Route } from './session/route.ts'
import { ErrorBoundary } from './shell/faults/ErrorBoundary.tsx'
import { JoinPage } from './shell/door/JoinPage.tsx'
import { WaitingPage } from './shell/door/WaitingPage.tsx'
import { WelcomePage } from './shell/door/WelcomePage.tsx'

// The board brings the core, the canvas and the shared document; the door does not have to wait for them.
const loadSeatPage = () => import('./shell/door/SeatPage.tsx')
const SeatPage = lazy(async () => ({ default: (await loadSeatPage()).SeatPage }))

/** The picture's worker starts and fetches its subject while a name is typed. */
const startPicture = () => import('./frame/picture/pictureDesk.ts').then(({ pictureDesk }) => pictureDesk())

export function App() {
  return (
    <ErrorBoundary>
      <Pages />
    </ErrorBoundary>
  )
}

function Pages() {
  const [route, setRoute] = useState<Route>(() => readRoute(location))
  const [seat, setSeat] = useState<SeatInfo | null>(null)

  function sitDown(taken: SeatInfo): void {
    // The key is gone from the address from here on: it cannot be read over a shoulder or from the history.
    history.replaceState(null, '', `/s/${taken.seatId}`)
    setSeat(taken)
    setRoute({ page: 'board', seatId: taken.seatId })
  }

  function sitAgain(seatId: string): void {
    history.replaceState(null, '', `/s/${seatId}`)
    setRoute({ page: 'board', seatId })
  }

  switch (route.page) {
    case 'welcome':
      return <WelcomePage />
    case 'join':
      void startPicture()
      void loadSeatPage()
      return <JoinPage jobId={route.jobId} linkKey={route.linkKey} onSeat={sitDown} />
    case 'scanned':
      return <ScannedPage onSeat={sitAgain} />
    case 'board':
      void startPicture()
      return (
        <Suspense fallback={<WaitingPage words="Opening" />}>
          <SeatPage seatId={route.seatId} seatTaken={seat} />
        </Suspense>
      )
  }
}
