import type { CommandProblem } from '../../shared-core/notes/answer.ts'
import type { CommandOf, NotesCommand } from '../../shared-core/notes/command.ts'
import type { Brought } from '../../shared-core/notes/decide.ts'
import type { Log } from '../log.ts'
import type { Store } from '../store/store.ts'
import { currentPlan, type NamedPlan } from './currentPlan.ts'
import type { DrawingRoom } from './drawingRoom.ts'
import type { Keeper } from './keeper.ts'
import type { LockPictures } from './lockPictures.ts'

export interface PreparingParts {
  readonly store: Store
  readonly keeper: Keeper
  readonly drawing: DrawingRoom
  readonly log: Log
}

/** What a command needs beside the notes, or why it cannot be had. */
export type Prepared = Omit<Brought, 'jobId'> | CommandProblem

/**
 * Makes and keeps what a command refers to: the plan as it is this instant, the pictures of a lock. What is kept for a
 * command that is then refused does no harm: it is a plan or picture under its own name, and nothing points at it.
 * @throws StoreError, FullError
 */
export async function prepare(parts: PreparingParts, jobId: string, command: NotesCommand): Promise<Prepared> {
  switch (command.do) {
    case 'that-one': return prepareMoment(parts, jobId, command)
    case 'lock.make': return prepareLock(parts, jobId, command)
    case 'screen-check': {
      const { swatchPhotoHash } = command.result
      const isThere = swatchPhotoHash === null || (await parts.store.kept(jobId, swatchPhotoHash))?.mediaType.startsWith('image/') === true
      return isThere ? {} : 'no-such-picture'
    }
    default: return {}
  }
}

async function prepareMoment({ store, keeper }: PreparingParts, jobId: string, { lookId, planHashSeen }: CommandOf<'that-one'>): Promise<Prepared> {
  const found = await lookOf(store, jobId, lookId, planHashSeen)
  if (typeof found === 'string') return found
  const { named, lookName } = found
  const planHash = await keeper.keep(jobId, 'application/json', named.text)
  return { moment: { lookName, planHash, asSeen: planHashSeen === null ? null : planHashSeen === planHash } }
}

async function prepareLock(parts: PreparingParts, jobId: string, command: CommandOf<'lock.make'>): Promise<Prepared> {
  const { store, keeper } = parts
  const { lookId, planHashSeen, standInsSeen } = command
  const found = await lookOf(store, jobId, lookId, planHashSeen)
  if (typeof found === 'string') return found
  const { named, lookName } = found
  if (planHashSeen !== null && planHashSeen !== named.hash) return 'plan-moved'
  const drawn = await draw(parts, named, lookId, standInsSeen)
  if (drawn === null) return 'picture-failed'
  const standIns = []
  for (const { words, itaDegrees, picture } of drawn.standIns) {
    standIns.push({ words, itaDegrees, pictureHash: await keeper.keep(jobId, 'image/png', picture) })
  }
  return {
    frozen: {
      lookName,
      planHash: await keeper.keep(jobId, 'application/json', named.text),
      predictionHash: await keeper.keep(jobId, 'application/json', drawn.prediction),
      pictureHash: await keeper.keep(jobId, 'image/png', drawn.picture),
      standIns,
    },
  }
}

async function lookOf(
  store: Store, jobId: string, lookId: string, hashSeen: string | null,
): Promise<{ readonly named: NamedPlan; readonly lookName: string } | CommandProblem> {
  const named = await currentPlan(store, jobId, hashSeen)
  if (named === null) return 'no-plan'
  const look = Object.hasOwn(named.plan.looks, lookId) ? named.plan.looks[lookId] : undefined
  return look === undefined ? 'no-such-look' : { named, lookName: look.name }
}

async function draw({ drawing, log }: PreparingParts, { plan }: NamedPlan, lookId: string, standIns: boolean): Promise<LockPictures | null> {
  try {
    return await drawing.draw({ plan, lookId, standIns })
  } catch (thrown) {
    log.warn('picture of a lock not drawn', { detail: String(thrown) })
    return null
  }
}
