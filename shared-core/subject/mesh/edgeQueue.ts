export interface QueuedEdge {
  readonly a: number
  readonly b: number
  /** What the ends were when the edge was offered: an older offer is passed over. */
  readonly stamp: number
}

/** Edges by cost, cheapest first: a binary heap in growing typed arrays. */
export class EdgeQueue {
  private cost = new Float64Array(1 << 16)
  private a = new Int32Array(1 << 16)
  private b = new Int32Array(1 << 16)
  private stamp = new Int32Array(1 << 16)
  private size = 0

  push(cost: number, a: number, b: number, stamp: number): void {
    if (this.size === this.cost.length) this.grow()
    let at = this.size++
    while (at > 0) {
      const parent = (at - 1) >> 1
      if (this.cost[parent]! <= cost) break
      this.move(parent, at)
      at = parent
    }
    this.put(at, cost, a, b, stamp)
  }

  pop(): QueuedEdge | undefined {
    if (this.size === 0) return undefined
    const top = { a: this.a[0]!, b: this.b[0]!, stamp: this.stamp[0]! }
    const last = --this.size
    const [cost, a, b, stamp] = [this.cost[last]!, this.a[last]!, this.b[last]!, this.stamp[last]!]
    let at = 0
    for (;;) {
      let child = 2 * at + 1
      if (child >= last) break
      if (child + 1 < last && this.cost[child + 1]! < this.cost[child]!) child++
      if (this.cost[child]! >= cost) break
      this.move(child, at)
      at = child
    }
    this.put(at, cost, a, b, stamp)
    return top
  }

  private put(at: number, cost: number, a: number, b: number, stamp: number): void {
    this.cost[at] = cost
    this.a[at] = a
    this.b[at] = b
    this.stamp[at] = stamp
  }

  private move(from: number, to: number): void {
    this.put(to, this.cost[from]!, this.a[from]!, this.b[from]!, this.stamp[from]!)
  }

  private grow(): void {
    const wider = <T extends Float64Array | Int32Array>(old: T, fresh: T): T => {
      fresh.set(old as never)
      return fresh
    }
    this.cost = wider(this.cost, new Float64Array(this.size * 2))
    this.a = wider(this.a, new Int32Array(this.size * 2))
    this.b = wider(this.b, new Int32Array(this.size * 2))
    this.stamp = wider(this.stamp, new Int32Array(this.size * 2))
  }
}
