import type { Thing, ThingKey } from '../things.ts'
import type { ViewKind } from '../view/projection.ts'
import type { ViewTransform } from '../view/viewTransform.ts'
import type { Placing } from './placing.ts'

/** What the panel shows at the moment: hands read it, they do not keep it. */
export interface Scene {
  readonly view: ViewKind
  readonly transform: ViewTransform
  readonly things: readonly Thing[]
  readonly selected: ThingKey | null
  readonly placing: Placing | null
}
