import { useMemo } from 'react'
import { plainLines } from '../../../shared-core/predict/plainWords.ts'
import { useBoard } from '../../session/useBoard.ts'
import { showNumbers } from './plainWords.ts'

/** The look as one would say it on the phone: hue and brightness of each place, each with its colour beside it. */
export function LookInWords() {
  const prediction = useBoard((board) => board.prediction)
  const lines = useMemo(() => plainLines(prediction), [prediction])
  const colours = useMemo(() => new Map(prediction.areas.map(({ id, colour }) => [id, colour.display])), [prediction])
  return (
    <section aria-labelledby="look-in-words">
      <h2 id="look-in-words" className="client-face-heading">What you see</h2>
      <ul className="look-in-words">
        {lines.map(({ areaId, words }) => (
          <li key={areaId}>
            <span className="look-in-words-colour" style={{ background: colours.get(areaId) }} aria-hidden />
            <span>{words}</span>
          </li>
        ))}
      </ul>
      <button type="button" className="button client-face-quiet" onClick={() => showNumbers(true)}>Show the numbers</button>
    </section>
  )
}
