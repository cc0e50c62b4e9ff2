import { tieLooseEnds } from './reading/looseEnds.ts'
import { mendWords } from './reading/mendWords.ts'
import { BranchSalvage } from './reading/salvageBranch.ts'
import { shareStructure } from './reading/shareStructure.ts'
import type { Look } from './schema/look.ts'
import { planSchema, type Plan } from './schema/plan.ts'
import { usualLook } from './usual/look.ts'

/** A plan that holds together, and in words what had to be done to it. */
export interface Salvage {
  readonly plan: Plan
  readonly repairs: readonly string[]
}

/** Five stops: the range of a head of which nothing better is known. Common practice, no source. */
const USUAL_RANGE_TIMES = 32
const SMALLEST_ENERGY_JOULES = 0.01

/** Sentences; more would be wallpaper. */
const MOST_REPAIRS = 40

/** What came of a look with the kit it was tied to. */
interface TiedLook {
  readonly kit: readonly object[]
  readonly outcome: ReturnType<typeof tieLooseEnds>
}

/**
 * Makes a plan out of whatever a shared document holds. Unlike a file, a document cannot be refused: people are in it.
 * So what cannot be read is mended or left out, and said; the outcome depends on the content alone, so that all
 * devices show the same. Whatever comes out passes the schema and every cross check.
 *
 * Keeps what it learned of each branch: `raw` must be made of branches that are never changed, and unchanged branches
 * come back as the same objects.
 */
export class PlanSalvage {
  private readonly branches = new BranchSalvage()
  private readonly tied = new WeakMap<Look, TiedLook>()
  private last: { readonly from: unknown; readonly salvage: Salvage } | null = null

  read(raw: object): Salvage {
    const { value, mends } = this.branches.salvage(planSchema, raw)
    const last = this.last
    if (last !== null && last.from === value) return last.salvage
    const plan = value as Plan
    const repairs = mends.map((mend) => mendWords(plan, mend))
    const whole = this.tie(this.soundHeads(plan, repairs), repairs)
    const salvage = { plan: this.keepBranches(whole), repairs: shortened(repairs) }
    this.last = { from: value, salvage }
    return salvage
  }

  /** Two people may each change one end of a head's range, and the ends cross. */
  private soundHeads(plan: Plan, repairs: string[]): Plan {
    const crossed = Object.entries(plan.heads).filter(([, head]) => !(head.lowestEnergyJoules < head.fullEnergyJoules))
    if (crossed.length === 0) return plan
    const heads = { ...plan.heads }
    for (const [id, head] of crossed) {
      const lowestEnergyJoules = head.fullEnergyJoules / USUAL_RANGE_TIMES
      if (lowestEnergyJoules >= SMALLEST_ENERGY_JOULES) heads[id] = { ...head, lowestEnergyJoules }
      else delete heads[id]
      repairs.push(`The lowest power of head “${head.name}” was not below its full power: it is shown with five stops.`)
    }
    return { ...plan, heads }
  }

  private tie(plan: Plan, repairs: string[]): Plan {
    const looks = Object.entries(plan.looks).map(([id, look]): [string, Look] => {
      const { look: tied, repairs: said } = this.tieLook(plan, look)
      repairs.push(...said)
      return [id, tied]
    })
    if (looks.length === 0) {
      repairs.push('No look of this job could be read: an empty one is shown.')
      looks.push(['look', usualLook])
    }
    const same = looks.every(([id, look]) => plan.looks[id] === look)
    return same ? plan : { ...plan, looks: Object.fromEntries(looks) }
  }

  private tieLook(plan: Plan, look: Look) {
    const kit = [plan.heads, plan.modifiers, plan.gels]
    const known = this.tied.get(look)
    if (known?.kit.every((part, index) => part === kit[index])) return known.outcome
    const outcome = tieLooseEnds(plan, look)
    this.tied.set(look, { kit, outcome })
    return outcome
  }

  /** Repairs make new objects each time; where they came out as before, the objects of before are kept. */
  private keepBranches(plan: Plan): Plan {
    const before = this.last?.salvage.plan
    return before ? shareStructure(before, plan) : plan
  }
}

function shortened(repairs: readonly string[]): readonly string[] {
  const different = [...new Set(repairs)]
  if (different.length <= MOST_REPAIRS) return different
  return [...different.slice(0, MOST_REPAIRS), `And ${different.length - MOST_REPAIRS} more of the kind.`]
}
