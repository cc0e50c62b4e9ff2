import { useBoard } from '../../session/useBoard.ts'
import type { LaidTape } from '../tapes/layTapes.ts'
import { keyText, sameThing } from '../things.ts'
import type { DrawnPoint, ViewKind } from '../view/projection.ts'
import { pixelAt, type ViewTransform } from '../view/viewTransform.ts'
import type { HeldThing } from './heldThings.ts'
import './others.css'

interface OthersLayerProps {
  readonly held: readonly HeldThing[]
  readonly tapes: readonly LaidTape[]
  readonly lookId: string
  readonly view: ViewKind
  readonly transform: ViewTransform
}

/** The others on the job: their pointers by name, and their names at what they hold. Nothing blinks. */
export function OthersLayer({ held, tapes, lookId, view, transform }: OthersLayerProps) {
  const people = useBoard((board) => board.people)
  const pointing = view === 'floor' ? people.filter((person) => !person.isSelf && person.pointer !== null && person.lookId === lookId) : []
  return (
    <div className="floor-others" aria-hidden>
      {pointing.map((person) => (
        <div key={person.seatId} className="floor-pointer" style={at(pixelAt(transform, [person.pointer?.xMetres ?? 0, -(person.pointer?.yMetres ?? 0)]))}>
          <svg width="14" height="16" viewBox="0 0 14 16">
            <path d="M1 1 L1 13 L4.4 10.2 L6.6 15 L8.8 14 L6.7 9.4 L11 9.2 Z" />
          </svg>
          {!held.some((one) => one.person.seatId === person.seatId) && <span>{person.name}</span>}
        </div>
      ))}
      {held.map(({ person, thing }) => {
        const tape = tapes.find((one) => sameThing(one.thing.key, thing.key))
        if (tape === undefined) return null
        return (
          <span key={person.seatId + keyText(thing.key)} className="floor-holder" style={at([tape.bounds.left, tape.bounds.bottom])}>
            {person.name} has this
          </span>
        )
      })}
    </div>
  )
}

function at([x, y]: DrawnPoint): { transform: string } {
  return { transform: `translate(${x}px, ${y}px)` }
}
