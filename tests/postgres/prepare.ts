import type { TestProject } from 'vitest/node'
import { startDatabase } from './database.ts'

declare module 'vitest' {
  interface ProvidedContext {
    databaseServerUrl: string
  }
}

/** One real PostgreSQL for all checks of this kind; each file makes databases of its own on it. */
export default async function prepare(project: TestProject): Promise<() => Promise<void>> {
  const database = await startDatabase()
  project.provide('databaseServerUrl', database.url)
  return database.stop
}
