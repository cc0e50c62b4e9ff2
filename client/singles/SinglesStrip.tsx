import { useBoard } from '../session/useBoard.ts'
import { Single } from './Single.tsx'
import { HOW_TO_ID } from './SinglePicture.tsx'
import './SinglesStrip.css'

/** One small picture a light, in the order they are set up: together they make the Frame. */
export function SinglesStrip() {
  const lights = useBoard((board) => board.prediction.lights)
  return (
    <section className="singles" aria-label="Singles">
      <p id={HOW_TO_ID} className="heard">
        Hold Space to see it alone
      </p>
      {lights.length === 0 ? (
        <p className="singles-none">No light is set up yet: the Frame is dark. Set the first one up on the Floor.</p>
      ) : (
        <ol className="singles-row">
          {lights.map((light) => (
            <Single key={light.id} light={light} />
          ))}
        </ol>
      )}
    </section>
  )
}
