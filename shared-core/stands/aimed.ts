import { degreesFromRadians } from '../arithmetic/portable.ts'
import type { Light, Look } from '../plan/schema/look.ts'
import type { Place } from '../plan/schema/quantities.ts'

/** How a head is turned, as it is checked on set: by what it points at and how far it looks up or down. */
export interface Aimed {
  /** What it points at on the floor plan: "the T", "the paper's middle". Null for a place that has no name. */
  readonly at: string | null
  /** From the T to below the point aimed at; positive: camera right, behind the T. */
  readonly rightOfTMetres: number
  readonly behindTMetres: number
  readonly heightMetres: number
  /** Above (positive) or below the horizontal. */
  readonly tiltDegrees: number
}

/** As near to a mark, a point is at it. */
const AT_METRES = 0.25

export function aimedOf({ place, aim }: Light, { subject, backdrop }: Look): Aimed {
  const [dx, dy, dz] = [aim.xMetres - place.xMetres, aim.yMetres - place.yMetres, aim.zMetres - place.zMetres]
  return {
    at: nameOf(aim, { subject, backdrop }),
    rightOfTMetres: aim.xMetres - subject.xMetres,
    behindTMetres: aim.yMetres - subject.yMetres,
    heightMetres: aim.zMetres,
    tiltDegrees: degreesFromRadians(Math.atan2(dz, Math.sqrt(dx * dx + dy * dy))),
  }
}

function nameOf({ xMetres: x, yMetres: y }: Place, { subject, backdrop }: Pick<Look, 'subject' | 'backdrop'>): string | null {
  if (Math.abs(x - subject.xMetres) <= AT_METRES && Math.abs(y - subject.yMetres) <= AT_METRES) return 'the subject'
  if (backdrop.kind !== 'paper' || Math.abs(y - backdrop.yMetres) > AT_METRES) return null
  const off = x - backdrop.centreXMetres
  if (Math.abs(off) <= AT_METRES) return 'the middle of the paper'
  return Math.abs(off) <= backdrop.widthMetres / 2 ? `the paper, camera ${off > 0 ? 'right' : 'left'} of its middle` : null
}
