import { X } from 'lucide-react'
import { useEffect, useRef } from 'react'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { AskLine } from './AskLine.tsx'
import './AskPanel.css'
import { forgetHand, removeWant, shutAsk, useAskPanel, useWants } from './askPanelStore.ts'
import { AskState } from './AskState.tsx'
import { useAnswer } from './useAnswer.ts'
import { usePreview } from './usePreview.ts'
import { WantChips } from './WantChips.tsx'
import { WayCard } from './WayCard.tsx'
import { WithoutButton } from './without/WithoutButton.tsx'

/** What is wanted of the look, and the ways to it. Only for those who may change the plan: the ways are edits. */
export function AskPanel() {
  const isOpen = useAskPanel((state) => state.isOpen)
  const mayEdit = useBoard((board) => board.mayEdit)
  return isOpen && mayEdit ? <OpenPanel /> : null
}

function OpenPanel() {
  const store = useBoardStore()
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const wants = useWants(lookId)
  const opening = useAskPanel((state) => state.opening)
  const hand = useAskPanel((state) => state.hand)
  const { asked, isPast, again, stop } = useAnswer(wants)
  const preview = usePreview()
  const panel = useRef<HTMLElement>(null)
  const { leave, look, giveWay } = preview
  const found = isPast ? null : (asked?.found ?? null)
  const isLaidOver = preview.seen !== null || hand === 'let-go'

  useFocusBack(panel)

  // What was looked at belonged to other wants, or to another look.
  useEffect(() => leave, [leave, wants, lookId])
  useEffect(() => {
    if (isPast) leave()
  }, [leave, isPast])

  // What the hand finds is shown in place of what was looked at; let go of, it goes on being shown as one of the ways.
  useEffect(() => {
    if (hand === 'pulling') giveWay()
  }, [giveWay, hand])
  useEffect(() => {
    const powers = found?.ways.find(({ by }) => by === 'powers')
    if (hand !== 'let-go' || !powers) return
    forgetHand()
    look(powers.by, powers.edit)
  }, [look, hand, found])

  // A panel that goes, or another look, leaves nothing lying over the board.
  useEffect(() => () => takeHandOff(store), [store, lookId])

  useEffect(() => {
    function onKeyDown(event: KeyboardEvent): void {
      if (event.key !== 'Escape' || event.defaultPrevented) return
      event.preventDefault()
      if (!isLaidOver) return shutAsk()
      leave()
      takeHandOff(store)
    }
    document.addEventListener('keydown', onKeyDown)
    return () => document.removeEventListener('keydown', onKeyDown)
  }, [store, leave, isLaidOver])

  return (
    <aside ref={panel} className="ask-panel" aria-label="Ask" tabIndex={-1}>
      <div className="ask-said">
        <header className="ask-head">
          <h2>Ask</h2>
          <WithoutButton />
          <button type="button" className="button button-bare" aria-label="Close Ask" onClick={shutAsk}>
            <X size={17} aria-hidden />
          </button>
        </header>
        <AskLine key={opening} lookId={lookId} onAgain={again} />
        <WantChips plan={plan} lookId={lookId} wants={wants} onRemove={(want) => removeWant(lookId, want)} />
        <AskState asked={asked} isPast={isPast} onAgain={again} onStop={stop} />
      </div>
      <ol className="ask-ways" aria-label="Ways to it">
        {found?.ways.map((way, index) => (
          <WayCard
            key={way.by}
            way={way}
            isFirst={index === 0}
            saidCount={wants.length}
            preview={preview}
            onApply={() => {
              preview.apply(way.edit)
              shutAsk()
            }}
          />
        ))}
      </ol>
    </aside>
  )
}

function takeHandOff(store: ReturnType<typeof useBoardStore>): void {
  if (forgetHand()) store.getState().hold(null)
}

/** The focus comes in with the panel and goes back where it was; to the panel and not its line, so that no phone's keyboard rises over the Frame. */
function useFocusBack(panel: { readonly current: HTMLElement | null }): void {
  useEffect(() => {
    const before = document.activeElement
    const own = panel.current
    if (!own?.contains(before)) own?.focus({ preventScroll: true })
    return () => {
      const isLost = document.activeElement === document.body || own?.contains(document.activeElement)
      if (isLost && (before instanceof HTMLElement || before instanceof SVGElement)) before.focus({ preventScroll: true })
    }
  }, [panel])
}
