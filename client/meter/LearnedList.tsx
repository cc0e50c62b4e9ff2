import { formatStops } from '../../shared-core/plan/entry/stops.ts'
import type { Learned } from '../../shared-core/meter/learn.ts'
import { useBoard } from '../session/useBoard.ts'

/** What the readings taught: each light of the look as its kit corrects it, and each piece that was read, with its ± before and now. */
export function LearnedList({ learned }: { readonly learned: Learned }) {
  const lookId = useBoard((board) => board.lookId)
  const lights = learned.lights.filter((light) => light.lookId === lookId)
  const pieces = learned.corrections.filter(({ readings, name }) => readings > 0 && name !== null)
  return (
    <section className="page-panel meter-card" aria-label="Learned">
      <h3>Learned</h3>
      <table className="meter-table">
        <thead><tr><th scope="col">Light</th><th scope="col">gives</th><th scope="col">± before</th><th scope="col">± now</th></tr></thead>
        <tbody>
          {lights.map(({ lightId, letter, stops, plusMinusBefore, plusMinusStops }) => (
            <tr key={lightId}><th scope="row">{letter}</th><td>{formatStops(stops)}</td><td>{plusMinusBefore.toFixed(2)}</td><td>{plusMinusStops.toFixed(2)}</td></tr>
          ))}
        </tbody>
      </table>
      {pieces.length > 0 && (
        <table className="meter-table">
          <thead><tr><th scope="col">Of the kit</th><th scope="col">gives</th><th scope="col">± before</th><th scope="col">± now</th></tr></thead>
          <tbody>
            {pieces.map(({ key, name, stops, plusMinusBefore, plusMinusStops }) => (
              <tr key={key}><th scope="row">{name}</th><td>{formatStops(stops)}</td><td>{plusMinusBefore.toFixed(2)}</td><td>{plusMinusStops.toFixed(2)}</td></tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="page-soft">In stops against what the kit’s papers say. The predictions of every look already reckon with it.</p>
    </section>
  )
}
