import { capital } from '../../shared-core/plan/capital.ts'
import type { GelSource } from '../../shared-core/plan/schema/kit.ts'

/** Where making a sheet begins for each kind; a measured one begins with nothing. */
export const startSources: Readonly<Record<GelSource['from'], GelSource | null>> = {
  family: { from: 'family', family: 'apricot', density: 1 },
  mired: { from: 'mired', shiftMired: 65 },
  neutral: { from: 'neutral', lossStops: 1 },
  rows: null,
  declared: { from: 'declared', colour: '#d98a5c', lossStops: 1 },
}

/** What a sheet is called until somebody names it. */
export function usualName(source: GelSource): string {
  switch (source.from) {
    case 'family':
      return source.density === 1 ? capital(source.family) : `${capital(source.family)} ${source.density.toFixed(1)}`
    case 'mired':
      return `${source.shiftMired >= 0 ? 'Warm' : 'Cool'} ${Math.abs(Math.round(source.shiftMired))} mired`
    case 'neutral':
      return `Neutral, ${Number(source.lossStops.toFixed(1))} ${source.lossStops <= 1 ? 'stop' : 'stops'}`
    case 'rows':
      return 'Measured sheet'
    case 'declared':
      return `Declared, ${Number(source.lossStops.toFixed(1))} lost`
  }
}
