import { commandBatchSchema } from '../../../shared-core/notes/command.ts'
import type { NotesDesk } from '../../notes/notesDesk.ts'
import type { SeatRoute } from '../route.ts'

/** `POST /s/<seatId>/notes`: what an outbox holds, in its order; one answer a command. */
export function notesRoute(desk: NotesDesk): SeatRoute {
  return {
    method: 'POST',
    name: 'notes',
    async answer(exchange, seat) {
      const { commands } = await exchange.body(commandBatchSchema)
      exchange.json(200, { answers: await desk.take(seat, commands) })
    },
  }
}
