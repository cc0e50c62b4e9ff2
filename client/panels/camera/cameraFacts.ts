import type { Prediction } from '../../../shared-core/predict/prediction.ts'
import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import { formatSize } from '../../../shared-core/plan/entry/size.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import type { Units } from '../../session/board.ts'
import type { Fact } from '../Facts.tsx'

/** Framing, depth, steady light and haze: what follows from where the camera stands and how it is set. */
export function cameraFacts({ framing, depthOfField, ambient, background }: Prediction, units: Units): readonly Fact[] {
  const length = (metres: number) => formatLength(metres, units)
  return [
    { name: 'Frame at the subject', value: formatSize(framing.atSubjectWidthMetres, framing.atSubjectHeightMetres, units), note: `${length(framing.subjectDistanceMetres)} away` },
    {
      name: 'Frame at the backdrop',
      value: formatSize(framing.atBackdropWidthMetres, framing.atBackdropHeightMetres, units),
      note: framing.backdropFillsFrame ? 'filled' : 'runs off the backdrop',
    },
    {
      name: 'Sharp from',
      value: depthOfField.farMetres === null ? `${length(depthOfField.nearMetres)} on` : `${length(depthOfField.nearMetres)} to ${length(depthOfField.farMetres)}`,
      ...(depthOfField.totalMetres === null ? {} : { note: `${length(depthOfField.totalMetres)} deep` }),
    },
    { name: 'Steady light', value: ambient.stops === null ? 'none' : `${signedStops(ambient.stops)} stops`, ...(ambient.stops === null ? {} : { note: `${Math.round(ambient.lux)} lux` }) },
    { name: 'Black lifted to', value: background.haze.blackStopsUnderGrey === null ? 'black' : signedStops(background.haze.blackStopsUnderGrey), note: 'from mid-grey' },
  ]
}
