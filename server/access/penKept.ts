import type { JobRegister } from '../store/store.ts'
import type { Pen } from './seat.ts'

/** Who holds the pen of a job, as the store has it. @throws StoreError */
export async function penKept(register: JobRegister, jobId: string): Promise<Pen> {
  const seatId = (await register.job(jobId))?.penSeatId ?? null
  const holder = seatId === null ? null : await register.seat(seatId)
  return holder === null ? null : { seatId: holder.seatId, name: holder.name }
}
