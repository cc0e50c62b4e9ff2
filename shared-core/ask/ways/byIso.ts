import { stopsFromTimes } from '../../arithmetic/portable.ts'
import { formatIso } from '../../plan/entry/camera.ts'
import { keptAims } from '../aim.ts'
import { changed, lookOf, type Draft } from '../draft.ts'
import { solvePowers } from '../powers.ts'
import { MARGIN_STOPS } from '../want.ts'
import { better, NOT_TRIED, type Trial, type Tried, type TriedWays } from './trial.ts'

/** Speeds as cameras offer them in third stops (ISO 12232 names; common practice). */
const SPEEDS = [50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400]
const MOST_TRIED = 5

/** Another film speed, with every other light kept at its level: the least change that leaves something in hand. */
export function byIso(trial: Trial): TriedWays {
  const worst = trial.excesses[0]
  if (!worst || trial.task.aims.some(({ want }) => want.kind === 'iso')) return NOT_TRIED
  const { isoSpeed } = lookOf(trial.base).camera
  const task = trial.task.withAims([...trial.task.aims, ...keptAims(trial.from.lights, trial.task.aims)])
  const needed = worst.stops + Math.sign(worst.stops) * MARGIN_STOPS
  const speeds = SPEEDS
    .filter((speed) => (speed - isoSpeed) * worst.stops > 0)
    .sort((a, b) => Math.abs(stopsFromTimes(a / isoSpeed)) - Math.abs(stopsFromTimes(b / isoSpeed)))
  const enough = speeds.findIndex((speed) => Math.abs(stopsFromTimes(speed / isoSpeed)) >= Math.abs(needed) - 0.05)
  let best: Tried | null = null
  for (const speed of speeds.slice(Math.max(0, enough < 0 ? speeds.length - 1 : enough), (enough < 0 ? speeds.length : enough + MOST_TRIED))) {
    const solution = solvePowers(task, withSpeed(trial.base, speed))
    const before: Tried | null = best
    best = better(trial, best, { by: 'iso', title: `Go to ${formatIso(speed)}`, solution })
    // Further is only noisier once it does no better.
    if (best === before || best.solution.shortfall === 0) break
  }
  return { best, limits: [] }
}

function withSpeed(draft: Draft, isoSpeed: number): Draft {
  return changed(draft, [{ path: ['looks', draft.lookId, 'camera', 'isoSpeed'], set: isoSpeed }])
}
