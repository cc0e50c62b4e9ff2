import { Attempts } from '../../access/attempts.ts'
import type { Log } from '../../log.ts'
import { FullError, type Keeper } from '../../notes/keeper.ts'
import { pictureTypeOf } from '../../notes/pictureType.ts'
import type { KeptThings } from '../../store/store.ts'
import { Problem } from '../problems.ts'
import type { SeatRoute } from '../route.ts'

const MINUTE_MS = 60_000

export interface KeptTerms {
  readonly maxAttachmentBytes: number
  readonly attachmentsPerMinute: number
}

/** Kept things of the seat's own job: `GET /s/<seatId>/kept/<hash>`, and `POST /s/<seatId>/kept` to attach a picture. */
export function keptRoutes(store: KeptThings, keeper: Keeper, terms: KeptTerms, log: Log): SeatRoute[] {
  const attached = new Attempts(terms.attachmentsPerMinute, MINUTE_MS)
  return [
    {
      method: 'GET',
      name: 'kept',
      takesRest: true,
      async answer(exchange, seat, hash) {
        const thing = await store.kept(seat.jobId, hash)
        if (thing === null) throw new Problem('not-found')
        exchange.kept(thing.mediaType, thing.bytes)
      },
    },
    {
      method: 'POST',
      name: 'kept',
      async answer(exchange, seat) {
        if (attached.isExhausted(seat.seatId, Date.now())) throw new Problem('too-many-tries')
        attached.count(seat.seatId, Date.now())
        const bytes = await exchange.bytes(terms.maxAttachmentBytes)
        const type = pictureTypeOf(bytes)
        // A page of another site can post a form here, but never with such a type unless we let it.
        const said = (exchange.request.headers['content-type'] ?? '').split(';', 1)[0]?.trim().toLowerCase()
        if (type === null || said !== type) throw new Problem('not-a-picture')
        try {
          const hash = await keeper.keep(seat.jobId, type, bytes)
          log.info('picture attached', { jobId: seat.jobId, seatId: seat.seatId, bytes: bytes.byteLength })
          exchange.json(201, { hash })
        } catch (thrown) {
          throw thrown instanceof FullError ? new Problem('full') : thrown
        }
      },
    },
  ]
}
