import { clippedInWords } from '../frame/clipping.ts'
import { signedStops } from '../ladder/areaNames.ts'
import { LEAST_SHARE } from '../ladder/feeds.ts'
import { useBoard } from '../session/useBoard.ts'
import { Facts } from './Facts.tsx'
import { meterInWords } from './meterWords.ts'

/** What a meter reads at an area, the colour it takes, and who feeds it. */
export function AreaReading({ areaId }: { readonly areaId: string }) {
  const area = useBoard((board) => board.prediction.areas.find(({ id }) => id === areaId))
  const lights = useBoard((board) => board.prediction.lights)
  if (!area) return null
  const feeds = area.byLight.filter(({ share }) => share >= LEAST_SHARE).sort((a, b) => b.share - a.share)
  return (
    <>
      <Facts
        label={`Readings at ${area.label}`}
        facts={[
          { name: 'All lights', value: signedStops(area.meter.stops), note: meterInWords(area.meter) },
          { name: 'Dome', value: signedStops(area.dome.stops) },
          { name: 'Flat disc', value: signedStops(area.flat.stops) },
          { name: 'Spot, over grey', value: signedStops(area.colour.spotStopsOverGrey) },
          {
            name: 'In the picture',
            value: <span className="area-colour"><span style={{ background: area.colour.display }} />{area.colour.words}</span>,
            ...(clippedInWords(area.colour.clipped) === '' ? {} : { note: clippedInWords(area.colour.clipped).slice(2) }),
          },
        ]}
      />
      <table className="area-feeds">
        <caption className="heard">Who feeds {area.label}</caption>
        <thead>
          <tr>
            <th scope="col">Light</th>
            <th scope="col">Alone</th>
            <th scope="col">Share</th>
          </tr>
        </thead>
        <tbody>
          {feeds.map(({ lightId, stops, share }) => {
            const light = lights.find(({ id }) => id === lightId)
            return (
              <tr key={lightId}>
                <th scope="row">
                  <span className="tape panel-letter">{light?.letter}</span> {light?.gel.name}
                </th>
                <td>{signedStops(stops)}</td>
                <td>{Math.round(share * 100)} %</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </>
  )
}
