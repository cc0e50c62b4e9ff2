import { spawn } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** What the page is built from, below the project's folder. */
const SOURCES = ['client', 'shared-core', 'package.json', 'package-lock.json']

/** Whether there is no built page, or something it is made of was changed since. */
export function isBuildStale(projectFolder: string, clientFolder: string): boolean {
  const page = join(clientFolder, 'index.html')
  if (!existsSync(page)) return true
  const builtMs = statSync(page).mtimeMs
  return SOURCES.some((source) => newestMs(join(projectFolder, source)) > builtMs)
}

/** Builds the page in a process of its own, so that the builder's memory goes when it is done. @throws when it fails. */
export function buildClient(projectFolder: string): Promise<void> {
  const vite = join(projectFolder, 'node_modules', 'vite', 'bin', 'vite.js')
  const args = [vite, 'build', '--config', join('client', 'vite.config.ts'), '--logLevel', 'info']
  return new Promise((resolve, reject) => {
    const building = spawn(process.execPath, args, { cwd: projectFolder, stdio: ['ignore', 'inherit', 'inherit'] })
    building.once('error', reject)
    building.once('exit', (code) => {
      if (code === 0) resolve()
      else reject(new Error(`the page could not be built (vite ended with ${code ?? 'a signal'})`))
    })
  })
}

function newestMs(path: string): number {
  if (!existsSync(path)) return 0
  const { mtimeMs } = statSync(path)
  if (!statSync(path).isDirectory()) return mtimeMs
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestMs(join(path, name))), mtimeMs)
}
