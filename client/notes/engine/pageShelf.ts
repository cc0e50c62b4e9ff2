import type { OutboxEntry, OutboxShelf } from './outboxShelf.ts'

/** An outbox that lies in the page alone, and goes with it. */
export function pageShelf(): OutboxShelf & { isEmpty(): boolean } {
  let entries: readonly OutboxEntry[] = []
  return {
    read: async () => entries,
    async put(entry) {
      if (!entries.some(({ command }) => command.id === entry.command.id)) entries = [...entries, entry]
    },
    async mark(id, refused) {
      entries = entries.map((entry) => (entry.command.id === id ? { ...entry, refused } : entry))
    },
    async remove(ids) {
      entries = entries.filter(({ command }) => !ids.includes(command.id))
    },
    isEmpty: () => entries.length === 0,
    outlivesPage: () => false,
    onOtherPage: () => () => undefined,
    close: () => undefined,
  }
}
