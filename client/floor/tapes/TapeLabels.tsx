import { memo, type MouseEvent } from 'react'
import { keyText, sameThing, type Thing, type ThingKey } from '../things.ts'
import type { LaidTape } from './layTapes.ts'
import type { TapeText } from './tapeText.ts'
import './tapes.css'

interface TapeLabelsProps {
  readonly tapes: readonly LaidTape[]
  readonly selected: ThingKey | null
  readonly colourOf: (id: string) => string
  readonly isOn: (id: string) => boolean
  /** The keyboard or a press came to a thing. */
  readonly onReach: (thing: Thing, inSight: boolean) => void
  /** Enter on a thing. */
  readonly onOpen: () => void
  /** Id of the words that say what the keys do. */
  readonly hintId: string
}

/**
 * The tapes and labels as buttons over the canvas: crisp at any zoom, and the way in for keyboard and screen reader.
 * Pressing and dragging is heard by the panel around them.
 */
export const TapeLabels = memo(function TapeLabels({ tapes, selected, colourOf, isOn, onReach, onOpen, hintId }: TapeLabelsProps) {
  return (
    <div className="floor-tapes">
      <svg className="floor-leaders" aria-hidden>
        {tapes.filter(({ shown }) => shown).map((tape) => <Leader key={keyText(tape.thing.key)} tape={tape} />)}
      </svg>
      {inReadingOrder(tapes).map(({ thing, text, bounds, inSight, shown }) => {
        const { key } = thing
        const isTape = text.letter !== ''
        return (
          <button
            key={keyText(key)}
            type="button"
            data-thing={keyText(key)}
            className={classOf(isTape, 'id' in key && !isOn(key.id), shown)}
            style={{
              transform: `translate(${Math.round(bounds.left)}px, ${Math.round(bounds.top)}px)`,
              width: bounds.right - bounds.left,
              height: bounds.bottom - bounds.top,
            }}
            aria-label={spokenName(text)}
            aria-pressed={sameThing(selected, key)}
            aria-describedby={hintId}
            onFocus={() => onReach(thing, inSight)}
            onClick={(event) => isFromKeyboard(event) && onOpen()}
          >
            {isTape && 'id' in key && <span className="floor-tape-gel" style={{ background: colourOf(key.id) }} />}
            {isTape && <span className="floor-tape-letter">{text.letter} </span>}
            <span className="floor-tape-lines">
              {text.lines.map((line) => <span key={line}>{line} </span>)}
            </span>
          </button>
        )
      })}
    </div>
  )
})

/** A press with a mouse or finger picks and drags; only Enter and Space click without one. */
function isFromKeyboard(event: MouseEvent): boolean {
  return event.detail === 0
}

function classOf(isTape: boolean, isOff: boolean, shown: boolean): string {
  return `${isTape ? 'floor-tape' : 'floor-label'}${isTape && isOff ? ' floor-tape-off' : ''}${shown ? '' : ' floor-tape-away'}`
}

/** Begins with what the eye reads, so that a spoken command finds it, and goes on to say it in full. */
function spokenName({ letter, lines, spoken }: TapeText): string {
  return `${[letter, ...lines].filter((part) => part !== '').join(' ')}: ${spoken}`
}

/** Lights by letter, then the rest, however they were laid. */
function inReadingOrder(tapes: readonly LaidTape[]): LaidTape[] {
  const mark = ({ text, thing }: LaidTape) => `${text.letter === '' ? 'thing' : 'light'} ${text.letter} ${keyText(thing.key)}`
  return [...tapes].sort((a, b) => (mark(a) < mark(b) ? -1 : 1))
}

/** Shorter than this the eye joins tape and thing by itself. */
const LEADER_PIXELS = 14

/** A hairline from a tape to its thing. */
function Leader({ tape: { bounds, anchor, text } }: { readonly tape: LaidTape }) {
  const x = Math.min(bounds.right, Math.max(bounds.left, anchor[0]))
  const y = Math.min(bounds.bottom, Math.max(bounds.top, anchor[1]))
  const length = Math.sqrt((x - anchor[0]) ** 2 + (y - anchor[1]) ** 2)
  if (length < LEADER_PIXELS) return null
  return <line x1={x} y1={y} x2={anchor[0]} y2={anchor[1]} className={text.letter === '' ? 'floor-leader floor-leader-label' : 'floor-leader'} />
}
