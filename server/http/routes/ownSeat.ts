import { z } from 'zod'
import type { Access } from '../../access/access.ts'
import { ROLES } from '../../access/role.ts'
import type { Seat } from '../../access/seat.ts'
import type { Log } from '../../log.ts'
import type { Exchange } from '../exchange.ts'
import { Problem } from '../problems.ts'
import type { SeatRoute } from '../route.ts'
import { personName, seatInfo } from './seats.ts'

const penBody = z.strictObject({ toSeatId: z.string().min(1).max(64).nullable() })
const nameBody = z.strictObject({ name: personName })
const linksBody = z.union([
  z.strictObject({ action: z.literal('list') }),
  z.strictObject({ action: z.literal('withdraw'), linkId: z.string().min(1).max(64) }),
  z.strictObject({ action: z.literal('revoke'), role: z.enum(ROLES) }),
  z.strictObject({
    action: z.literal('renew').default('renew'), role: z.enum(ROLES),
    /** Left out: as long as the relay lets a link be good. */
    days: z.number().int().min(1).max(3_650).optional(),
  }),
])

const DAY_MS = 86_400_000

/** What a person can ask about their own seat and, as photographer, about the job's. */
export function ownSeatRoutes(access: Access, log: Log): SeatRoute[] {
  async function withdraw(exchange: Exchange, seat: Seat, linkId: string): Promise<void> {
    const done = await access.withdrawLink(seat, linkId)
    if (done === 'noSuchLink') throw new Problem('no-such-link')
    if (done === 'ownLink') throw new Problem('own-link')
    log.info('link withdrawn', { jobId: seat.jobId, linkId })
    exchange.json(200, { links: await access.links(seat.jobId) })
  }

  return [
    {
      method: 'GET',
      name: 'me',
      answer: async (exchange, seat) => exchange.json(200, { ...seatInfo(seat), pen: await access.penOf(seat.jobId) }),
    },
    {
      method: 'POST',
      name: 'name',
      async answer(exchange, seat) {
        const { name } = await exchange.body(nameBody)
        await access.rename(seat, name)
        exchange.json(200, seatInfo({ ...seat, name }))
      },
    },
    {
      method: 'POST',
      name: 'pen',
      async answer(exchange, seat) {
        const { toSeatId } = await exchange.body(penBody)
        const pen = await access.movePen(seat, toSeatId)
        if (pen === 'notYours') throw new Problem('only-photographer')
        if (pen === 'noSuchClient') throw new Problem('no-such-client')
        log.info('pen moved', { jobId: seat.jobId, bySeatId: seat.seatId, toSeatId: pen?.seatId ?? 'photographer' })
        exchange.json(200, { pen })
      },
    },
    {
      method: 'POST',
      name: 'links',
      async answer(exchange, seat) {
        if (seat.role !== 'photographer') throw new Problem('only-photographer')
        const wish = await exchange.body(linksBody)
        if (wish.action === 'list') return exchange.json(200, { links: await access.links(seat.jobId) })
        if (wish.action === 'withdraw') return await withdraw(exchange, seat, wish.linkId)
        const key = wish.action === 'revoke'
          ? await access.revokeLinks(seat, wish.role)
          : await access.renewLink(seat.jobId, wish.role, wish.days === undefined ? undefined : wish.days * DAY_MS)
        log.info('link made', { jobId: seat.jobId, role: wish.role, action: wish.action })
        exchange.json(201, { role: wish.role, url: exchange.linkTo(seat.jobId, key) })
      },
    },
  ]
}
