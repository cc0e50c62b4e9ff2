import { eachOf, isGroup, type Group } from './groups.ts'
import type { Migration } from './migrate.ts'

/**
 * Version 2 knows what some checks have to know: batches and sizes of sheets, sandbags, safety cables, circuits, frames
 * planned, whether the white balance is fixed, what must read true, and which snags somebody accepted. An older plan
 * never said, so it says "not known" wherever that can be said. Its white balance was a number, hence fixed.
 */
export const fromVersion1: Migration = {
  from: 1,
  why: 'Checks that can be accepted, and what further checks have to know',
  migrate: (plan) => ({
    ...plan,
    gels: eachOf(plan['gels'], (gel) => ({ batch: '', sheetWidthMetres: 0.5, sheetHeightMetres: 0.6, ...gel })),
    looks: eachOf(plan['looks'], (look) => ({
      framesPlanned: null,
      mustReadTrue: {},
      accepted: {},
      ...look,
      camera: added(look['camera'], { whiteBalanceFixed: true }),
      lights: eachOf(look['lights'], (light) => ({ sandbag: false, safetyCable: false, circuitId: '', ...light })),
    })),
  }),
}

function added(group: unknown, news: Group): unknown {
  return isGroup(group) ? { ...news, ...group } : group
}
