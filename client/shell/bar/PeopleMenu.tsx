import { LookWithButton } from '../../agree/call/LookWithButton.tsx'
import { Popover } from '../../controls/Popover.tsx'
import type { Person } from '../../session/board.ts'
import { useBoard } from '../../session/useBoard.ts'
import { useSeat } from '../../session/useSeat.ts'
import { ask } from '../../session/pageStore.ts'
import './PeopleMenu.css'

/** Who is here, who holds the pen, and how to ask more people in. */
export function PeopleMenu() {
  const people = useBoard((board) => board.people)
  return (
    <Popover
      label="People on this job"
      align="end"
      trigger={
        <button type="button" className="button people-menu-trigger" title={people.map((person) => person.name).join(', ')}>
          <span className="people-menu-faces" aria-hidden>
            {people.slice(0, 4).map((person) => (
              <Face key={person.seatId} person={person} />
            ))}
          </span>
          <span className="people-menu-count">{people.length <= 1 ? 'Only you' : `${people.length} here`}</span>
        </button>
      }
    >
      <PeopleList />
    </Popover>
  )
}

/** The list itself, for the menu and for the phone's sheet. */
export function PeopleList() {
  const people = useBoard((board) => board.people)
  const isPhotographer = useBoard((board) => board.role === 'photographer')
  const handPenTo = useBoard((board) => board.handPenTo)
  const takePenBack = useBoard((board) => board.takePenBack)
  const seat = useSeat()
  return (
    <div className="people-list">
      <ul>
        {people.map((person) => (
          <li key={person.seatId} className="people-list-person">
            <Face person={person} />
            <span className="people-list-name">
              {person.name}
              {person.isSelf && <span className="people-list-soft"> (you)</span>}
              <span className="people-list-role">
                {person.role}
                {person.hasPen && ', holds the pen'}
              </span>
            </span>
            {!person.isSelf && <LookWithButton person={person} />}
            {isPhotographer && person.role === 'client' && (
              <button
                type="button"
                className="button button-lined"
                aria-label={person.hasPen ? `Take the pen back from ${person.name}` : `Hand over the pen to ${person.name}`}
                onClick={() => (person.hasPen ? takePenBack() : handPenTo(person.seatId))}
              >
                {person.hasPen ? 'Take the pen back' : 'Hand over the pen'}
              </button>
            )}
          </li>
        ))}
        {people.length === 0 && <li className="people-list-soft">Nobody else is connected</li>}
      </ul>
      {isPhotographer && seat !== null && (
        <button type="button" className="button button-lined" onClick={() => ask({ kind: 'invite' })}>
          Ask somebody in
        </button>
      )}
    </div>
  )
}

function Face({ person }: { readonly person: Person }) {
  const initials = person.name
    .split(/[\s-]+/)
    .filter((word) => word !== '')
    .slice(0, 2)
    .map((word) => [...word][0]?.toUpperCase())
    .join('')
  return (
    <span className="face" data-role={person.role} data-pen={person.hasPen} aria-hidden>
      {initials}
    </span>
  )
}
