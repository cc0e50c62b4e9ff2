import { defineConfig } from 'vitest/config'

/** Each kind of check is a project of its own, so that one kind can be run alone: `npx vitest run --config tests/vitest.config.ts --project core`. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'core',
          root: new URL('..', import.meta.url).pathname,
          include: ['tests/core/**/*.test.ts', 'tests/reference/**/*.test.ts', 'tests/client/**/*.test.{ts,tsx}'],
          environment: 'node',
          // Work, not waiting: a loaded machine is slow, and slowness is the bench's business.
          testTimeout: 60_000,
          // What files share is read and compiled once a worker; each puts back what it replaces.
          isolate: false,
        },
      },
      {
        test: {
          name: 'server',
          root: new URL('..', import.meta.url).pathname,
          include: ['tests/relay/**/*.test.ts', 'tests/store/**/*.test.ts', 'tests/cli/**/*.test.ts'],
          environment: 'node',
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'postgres',
          root: new URL('..', import.meta.url).pathname,
          include: ['tests/postgres/**/*.test.ts'],
          environment: 'node',
          globalSetup: ['tests/postgres/prepare.ts'],
          // They wait for sockets, processes and the database more than they work.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          root: new URL('..', import.meta.url).pathname,
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          globalSetup: ['tests/browser/prepare.ts'],
          // A loaded machine is slow at pictures, and no check asks how fast: that is the bench's business.
          testTimeout: 180_000,
          hookTimeout: 90_000,
          expect: { poll: { timeout: 15_000 } },
          fileParallelism: false,
          // One browser serves all files, and what they share is read once; each has a job and contexts of its own.
          isolate: false,
        },
      },
    ],
  },
})
