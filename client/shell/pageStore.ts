import { createStore } from 'zustand/vanilla'
import { useStore } from 'zustand'
import type { Problem } from '../../shared-core/plan/reading/problem.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/** A question or a list in the middle of the page; one at a time. */
export type Asking =
  | { readonly kind: 'shortcuts' }
  | { readonly kind: 'invite' }
  | { readonly kind: 'replace'; readonly plan: Plan; readonly fileName: string; readonly repairs: readonly string[] }
  | { readonly kind: 'bad-file'; readonly fileName: string; readonly problems: readonly Problem[] }
  | { readonly kind: 'refused'; readonly plan: Plan; readonly reason: string }

interface Page {
  readonly asking: Asking | null
}

/** What the page asks, apart from the board: it belongs to no plan and nobody else sees it. */
export const pageStore = createStore<Page>()(() => ({ asking: null }))

export function ask(asking: Asking | null): void {
  pageStore.setState({ asking })
}

export function useAsking(): Asking | null {
  return useStore(pageStore, (page) => page.asking)
}
