import { useBoard } from '../../session/useBoard.ts'
import { showNumbers } from './plainWords.ts'

/** A client's way back from the board; nothing for anybody else. */
export function PlainWordsButton() {
  const isClient = useBoard((board) => board.role === 'client')
  return isClient ? <button type="button" className="button" onClick={() => showNumbers(false)}>Plain words</button> : null
}
