import { join, resolve } from 'node:path'
import { readSettings, SettingsError } from '../settings.ts'
import { StoreError } from '../store/storeError.ts'

/** The store that the settings name: the relay's own file, or a database. */
export type WhichStore = { readonly kind: 'sqlite'; readonly path: string } | { readonly kind: 'postgres'; readonly url: string }

/** The store that `npm start` would open with the same environment. @throws SettingsError */
export function whichStore(environment: Readonly<Record<string, string | undefined>>): WhichStore {
  const settings = readSettings(environment)
  if (settings.DATABASE_URL !== '') return { kind: 'postgres', url: settings.DATABASE_URL }
  return { kind: 'sqlite', path: join(resolve(settings.DATA_DIR), 'halfstop.db') }
}

/** Runs one command of an operator's and ends the process: 0 fine, 1 something was found wrong, 2 it could not be done. */
export async function runCommand(command: () => Promise<0 | 1>): Promise<never> {
  try {
    process.exit(await command())
  } catch (thrown) {
    const isTheirs = thrown instanceof SettingsError || thrown instanceof StoreError
    console.error(isTheirs ? thrown.message : thrown)
    process.exit(2)
  }
}
