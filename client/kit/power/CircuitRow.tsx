import type { CircuitState } from '../../../shared-core/kit/circuits.ts'
import { MOST_CIRCUIT_PERCENT } from '../../../shared-core/predict/supply.ts'
import { PlugRow } from './PlugRow.tsx'

/** One breaker: a bar up to the line, what is plugged into it, and a word of care when it is past the line. */
export function CircuitRow({ state }: { readonly state: CircuitState }) {
  const { label, breakerAmps, percent, amps, watts, worstSeconds, allOnPercent, plugs } = state
  const level = percent > 100 ? 'over' : percent > MOST_CIRCUIT_PERCENT ? 'past' : 'within'
  // A full bar is a quarter more than the breaker, so that what is over it is still seen to be.
  const wide = (share: number) => `${Math.min(100, share / 1.25)}%`
  return (
    <section className="page-panel kit-card circuit" data-level={level} aria-label={label || 'Circuit'}>
      <h3>
        {label || 'Circuit'} <span className="page-soft">{breakerAmps} A breaker</span>
        <span className="circuit-verdict">{words[level]}</span>
      </h3>
      <div className="circuit-bar" aria-hidden>
        <div className="circuit-fill" style={{ width: wide(percent) }} />
        <div className="circuit-mark" style={{ left: wide(MOST_CIRCUIT_PERCENT) }}><span>80 %</span></div>
        <div className="circuit-mark circuit-breaker" style={{ left: wide(100) }}><span>100 %</span></div>
      </div>
      <p>
        <b>{Math.round(percent)} %</b>: {amps.toFixed(1)} A of {breakerAmps}, {(watts / 1_000).toFixed(1)} kW
        {worstSeconds !== null && <span className="page-soft"> · for {secondsText(worstSeconds)} after each frame</span>}
      </p>
      {level !== 'within' && (
        <p className="circuit-care">
          {level === 'over' ? 'More than the breaker is rated for: it may open while the heads recycle.' : 'Nothing is left in hand.'} Move a plug, slow the recycling down, or bring in another circuit: what the building can
          carry, a qualified electrician says.
        </p>
      )}
      {allOnPercent > percent + 0.5 && (
        <p className="page-soft">With everything on: {Math.round(allOnPercent)} %{allOnPercent > MOST_CIRCUIT_PERCENT ? ', past the line' : ''}</p>
      )}
      <ul>
        {plugs.map((plug) => <PlugRow key={`${plug.kind} ${plug.id}`} plug={plug} />)}
        {plugs.length === 0 && <li className="page-soft">Nothing is plugged in here.</li>}
      </ul>
    </section>
  )
}

const words = { within: 'within the line', past: 'past the line', over: 'over the breaker' } as const

/** "0.2 s"; of the very quick, "under 0.1 s". */
function secondsText(seconds: number): string {
  return seconds < 0.1 ? 'under 0.1 s' : `${seconds.toFixed(1)} s`
}
