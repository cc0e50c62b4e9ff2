/**
 * Remembers its last result and gives it again while every dependency is the same value (`===`). The plan shares its
 * unchanged branches between snapshots, so a stage runs again only when something it names has really changed.
 * Remembering never changes a result: a stage's compute is a function of its dependencies alone.
 */
export class Stage<Result> {
  private dependencies: readonly unknown[] | null = null
  private result: Result | undefined

  of(dependencies: readonly unknown[], compute: () => Result): Result {
    if (this.dependencies === null || !sameValues(this.dependencies, dependencies)) {
      this.result = compute()
      this.dependencies = dependencies
    }
    return this.result as Result
  }
}

/** One stage for each key, such as one a light; keys not asked for during a round are forgotten at its end. */
export class StagesByKey<Result> {
  private readonly stages = new Map<string, Stage<Result>>()

  of(key: string, dependencies: readonly unknown[], compute: () => Result): Result {
    let stage = this.stages.get(key)
    if (!stage) this.stages.set(key, (stage = new Stage<Result>()))
    return stage.of(dependencies, compute)
  }

  keepOnly(keys: ReadonlySet<string>): void {
    for (const key of this.stages.keys()) if (!keys.has(key)) this.stages.delete(key)
  }
}

/** Whether both hold the very same things in the same order (`Object.is`): then a stage need not run again. */
export function sameValues(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, i) => Object.is(value, b[i]))
}
