import { useEffect, useId, useRef, useState, type FormEvent } from 'react'
import { parseWants } from '../../shared-core/ask/parseWants.ts'
import { useBoardStore } from '../session/useBoard.ts'
import { addWants, askPanelStore, useAskPanel } from './askPanelStore.ts'

interface AskLineProps {
  readonly lookId: string
  /** Asks anew, when nothing is added. */
  readonly onAgain: () => void
}

/** What is wanted, in the words people say it; what is understood becomes a chip, and the line is free again. */
export function AskLine({ lookId, onAgain }: AskLineProps) {
  const store = useBoardStore()
  const firstWords = useAskPanel((state) => state.firstWords)
  const [text, setText] = useState(firstWords)
  const [trouble, setTrouble] = useState('')
  const field = useRef<HTMLInputElement>(null)
  const id = useId()

  // What a hand let go of is said already, and a thumb's keyboard would hide the Frame; else it is to be typed in.
  useEffect(() => {
    const isSaid = askPanelStore.getState().hand !== 'none'
    const line = field.current
    if (line === null || isSaid || !matchMedia('(pointer: fine)').matches) return
    line.focus()
    // Of "nose −0.4" the level is to be typed over.
    line.setSelectionRange(line.value.lastIndexOf(' ') + 1, line.value.length)
  }, [])

  function add(event: FormEvent): void {
    event.preventDefault()
    if (text.trim() === '') return onAgain()
    const { plan } = store.getState()
    const read = parseWants(text, plan, plan.looks[lookId]!)
    setTrouble(read.ok ? '' : read.message)
    if (!read.ok) return
    setText('')
    addWants(lookId, read.wants)
  }

  return (
    <form className="ask-line" onSubmit={add}>
      <label htmlFor={id} className="heard">Ask for</label>
      <input
        ref={field}
        id={id}
        className="number-field-input ask-line-field"
        value={text}
        maxLength={600}
        placeholder="paper −1.5, lips true, f/8"
        autoComplete="off"
        autoCapitalize="off"
        enterKeyHint="go"
        aria-invalid={trouble !== ''}
        aria-describedby={`${id}-trouble`}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" className="button button-lined">Ask</button>
      <p id={`${id}-trouble`} role="status" className="ask-line-trouble">{trouble}</p>
    </form>
  )
}
