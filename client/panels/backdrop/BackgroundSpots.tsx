import type { BackgroundPrediction, WhiteVerdict } from '../../../shared-core/predict/prediction.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import { Facts } from '../Facts.tsx'

const verdictWords: Readonly<Record<WhiteVerdict, string>> = { white: 'white', 'cast-left': 'cast left', 'not-white': 'not white' }

/** Each spot of the background by itself, then what white would cost: evenness, wrap and haze. */
export function BackgroundSpots({ background }: { readonly background: BackgroundPrediction }) {
  const { spots, wrap, unevennessStops } = background
  return (
    <>
      <table className="area-feeds">
        <caption className="heard">The background, spot by spot</caption>
        <thead>
          <tr>
            <th scope="col">Spot</th>
            <th scope="col">Reads</th>
            <th scope="col">Left</th>
            <th scope="col">To white</th>
          </tr>
        </thead>
        <tbody>
          {spots.map((spot) => (
            <tr key={spot.areaId}>
              <th scope="row">{spot.label.replace('background ', '')}</th>
              <td>
                {verdictWords[spot.verdict]}
                {spot.verdictAfterFinish !== spot.verdict && `, finished ${verdictWords[spot.verdictAfterFinish]}`}
              </td>
              <td>{spot.cast === '' ? '' : spot.cast}</td>
              <td>{spot.stopsMissing === null ? 'dark' : spot.stopsMissing <= 0 ? `${(-spot.stopsMissing).toFixed(1)} in hand` : spot.stopsMissing.toFixed(1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Facts
        label="What follows from the background"
        facts={[
          { name: 'Uneven by', value: `${unevennessStops.toFixed(1)}`, note: 'brightest over darkest' },
          ...(wrap === null
            ? []
            : [
                { name: 'Wrap on the subject', value: signedStops(wrap.stopsNow), note: `${signedStops(wrap.stopsWhenWhite)} once white` },
                { name: 'Hottest channel then', value: signedStops(wrap.hottestChannelStopsWhenWhite), note: 'over clip' },
              ]),
        ]}
      />
    </>
  )
}
