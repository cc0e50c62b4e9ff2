import type { Limit } from '../answer.ts'
import { lookOf, lightOf, type Draft } from '../draft.ts'
import { shortfallOf } from '../judge.ts'
import { modelOf } from '../modelOf.ts'
import { solvePowers, type PowerSolution } from '../powers.ts'
import { COLOUR_TOLERANCE, LEVEL_TOLERANCE_STOPS } from '../want.ts'
import { areaName, gelNames } from '../wantWords.ts'
import { chosen, choicesOf, sheetSetsOf, type Choice } from './colourChoices.ts'
import { ColourFit } from './colourFit.ts'
import { inTheWayOf, type Trial, type TriedWays } from './trial.ts'

/** A light is changed only if that makes the fit better by more than this share. */
const WORTH_CHANGING = 0.03
/** Choices that the linear fit ranks best, tried by the real prediction. */
const TRIED_FOR_REAL = 6
const MOST_CHANGED = 3
const FINER_STEPS = [4, 2, 1] as const

/**
 * Finds sheets and distances for wanted colours: a linear fit ranks what each light may become, the best are tried by
 * the real prediction with their powers solved, and distances are then made finer. One light after the other.
 */
export function byColour(trial: Trial, allowsStacks: boolean): TriedWays {
  const search = new ColourSearch(trial, allowsStacks)
  let best: State = { choices: new Map(), solution: trial.powers, miss: missOf(trial, trial.powers) }
  for (let turn = 0; turn < MOST_CHANGED && best.solution.shortfall > 0; turn++) {
    const next = search.changeOne(best)
    if (!next) break
    best = search.finerPlaces(next)
  }
  if (best.choices.size === 0) return { best: null, limits: [] }
  const limits = best.solution.shortfall > 0 ? [drawerLimit(trial, best.solution)] : []
  return { best: { by: 'gel', title: titleOf(trial, best.choices), solution: best.solution }, limits }
}

interface State {
  /** Of the lights that are changed. */
  readonly choices: ReadonlyMap<string, Choice>
  readonly solution: PowerSolution
  readonly miss: number
}

class ColourSearch {
  private readonly lightIds: readonly string[]
  private readonly choices: ReturnType<typeof choicesOf>
  private readonly fit: ColourFit

  constructor(private readonly trial: Trial, allowsStacks: boolean) {
    const { task, base } = trial
    const model = modelOf(task.predict(base), lookOf(base).meter)
    const wantedIds = task.aims.flatMap(({ want }) => ('areaId' in want ? [want.areaId] : []))
    this.lightIds = model.lightIds.filter((id) => wantedIds.some((areaId) => model.shareAt(areaId, id) > 1e-3))
    this.choices = choicesOf(trial, this.lightIds, sheetSetsOf(base, allowsStacks))
    this.fit = new ColourFit(task, base, model, this.lightIds)
  }

  /** The best change of one more light, or of one again, by the real prediction; null when none is worth it. */
  changeOne(state: State): State | null {
    const columns = this.lightIds.map((id, i) => this.fit.column(this.choiceOf(id, i, state), i))
    const present = this.fit.miss(columns)
    const ranked = this.lightIds.flatMap((id, i) => this.choices[i]!.map((choice) => {
      const miss = this.fit.miss(columns.map((column, k) => (k === i ? this.fit.column(choice, i) : column)))
      return { id, choice, miss }
    })).filter(({ miss }) => miss < present * (1 - WORTH_CHANGING)).sort((a, b) => a.miss - b.miss)
    const tried = oneEach(ranked).slice(0, TRIED_FOR_REAL)
      .map(({ id, choice }) => this.judged(new Map([...state.choices, [id, choice]])))
    const best = tried.reduce<State | null>((least, each) => (each.miss < (least ?? state).miss ? each : least), null)
    return best && best.miss < state.miss ? best : null
  }

  /** Moves the changed lights in or back by single steps while that brings the look nearer. */
  finerPlaces(state: State): State {
    let best = state
    for (const steps of FINER_STEPS) {
      for (const lightId of best.choices.keys()) {
        for (const by of [steps, -steps]) {
          const next = this.moved(best, lightId, by)
          if (next && next.miss < best.miss) {
            best = next
            break
          }
        }
      }
    }
    return best
  }

  private moved(state: State, lightId: string, by: number): State | null {
    const choice = state.choices.get(lightId)!
    const next = this.judged(new Map([...state.choices, [lightId, { ...choice, stepsIn: choice.stepsIn + by }]]))
    return inTheWayOf(lightId, this.trial, next.solution.prediction).length > 0 ? null : next
  }

  private judged(choices: ReadonlyMap<string, Choice>): State {
    const draft = [...choices].reduce((each: Draft, [id, choice]) => chosen(each, id, choice), this.trial.base)
    const solution = solvePowers(this.trial.task, draft)
    return { choices, solution, miss: missOf(this.trial, solution) }
  }

  /** What a light is in a state, by the nearest choice that the model has been weighed at. */
  private choiceOf(lightId: string, lightIndex: number, { choices }: State): (typeof this.choices)[number][number] {
    const now = choices.get(lightId)
    const all = this.choices[lightIndex]!
    if (!now) return all[0]!
    const sameSheets = all.filter(({ gelIds }) => gelIds.join() === now.gelIds.join())
    return sameSheets.reduce((near, each) => (Math.abs(each.stepsIn - now.stepsIn) < Math.abs(near.stepsIn - now.stepsIn) ? each : near))
  }
}

/** The best place for each light and sheets: the others differ in distance only, which is made finer afterwards. */
function oneEach<Ranked extends { id: string; choice: Choice }>(ranked: readonly Ranked[]): Ranked[] {
  const seen = new Set<string>()
  return ranked.filter(({ id, choice }) => {
    const key = `${id}/${choice.gelIds.join()}`
    return seen.has(key) ? false : seen.add(key)
  })
}

/** Sum of squares of what is missed, each in its own tolerance. */
function missOf({ task }: Trial, { outcomes }: PowerSolution): number {
  return task.aims.reduce((sum, { want }, i) => {
    const miss = outcomes[i]!.miss / (want.kind === 'area-colour' ? COLOUR_TOLERANCE : LEVEL_TOLERANCE_STOPS)
    return sum + miss * miss
  }, 0)
}

function titleOf({ base }: Trial, choices: ReadonlyMap<string, Choice>): string {
  return [...choices].map(([id, { gelIds, stepsIn }]) => {
    const light = lightOf(base, id)
    const sheets = light.gelIds.join() === gelIds.join() ? '' : `${gelNames(gelIds, base.plan)} on ${light.letter}`
    const place = stepsIn === 0 ? '' : `${light.letter} ${Math.abs(stepsIn) * 5} cm ${stepsIn > 0 ? 'in' : 'back'}`
    return [sheets, place].filter(Boolean).join(', ')
  }).join('; ')
}

function drawerLimit({ task, base }: Trial, { outcomes, draft }: PowerSolution): Limit {
  const weight = (i: number): number => shortfallOf(task.aims[i]!, outcomes[i]!.miss, draft)
  const worst = outcomes.reduce((far, _, i) => (weight(i) > weight(far) ? i : far), 0)
  const { want, lightId } = task.aims[worst]!
  const place = 'areaId' in want ? ` the ${areaName(want.areaId, lookOf(base))}` : ' what is wanted'
  return { kind: 'gel', aboutId: lightId, byStops: null, words: `No sheet of the drawer brings${place} nearer than ${Math.abs(outcomes[worst]!.miss).toFixed(1)}` }
}
