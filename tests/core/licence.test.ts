import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

/** A package as npm's lock file has it. */
interface LockedPackage {
  readonly license?: string
  readonly dependencies?: Readonly<Record<string, string>>
  readonly optionalDependencies?: Readonly<Record<string, string>>
  readonly peerDependencies?: Readonly<Record<string, string>>
}

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8')
const { packages } = JSON.parse(read('package-lock.json')) as { packages: Readonly<Record<string, LockedPackage>> }
const licence = read('LICENSE')
/** `name (licence): copyright`, several names with commas between; `@scope/*` is all of a scope. */
const notices = licence.split('\n').flatMap((line) => {
  const [, names, by] = /^([^()]+) \(([^()]+)\): /.exec(line) ?? []
  return names === undefined ? [] : names.split(', ').map((name) => ({ name, by: by! }))
})

/** They build and start; nothing that they use themselves is in the page or the server. */
const TOOLS = ['vite', 'tsx', '@vitejs/plugin-react', 'workbox-build']
const FOLDER = 'node_modules/'

/** What a package at `from` gets when it asks for `name`: the nearest folder up. */
function resolved(from: string, name: string): string | null {
  for (let at = from; ;) {
    const path = `${at === '' ? '' : `${at}/`}${FOLDER}${name}`
    if (packages[path]) return path
    if (at === '') return null
    at = at.slice(0, Math.max(0, at.lastIndexOf(FOLDER) - 1))
  }
}

const nameAt = (path: string): string => path.slice(path.lastIndexOf(FOLDER) + FOLDER.length)

function productionTree(): readonly string[] {
  const met = new Set<string>()
  const meet = (from: string): void => {
    const { dependencies, optionalDependencies, peerDependencies } = packages[from]!
    for (const name of Object.keys({ ...dependencies, ...optionalDependencies, ...peerDependencies })) {
      const path = resolved(from, name)
      if (path === null || met.has(path)) continue
      met.add(path)
      if (!TOOLS.includes(name)) meet(path)
    }
  }
  meet('')
  return [...met]
}

it('every package that the page or the server is made with is named in LICENSE, under its own licence', () => {
  const tree = productionTree()
  expect(tree.length).toBeGreaterThan(80)
  const missing = tree.filter((path) => {
    const name = nameAt(path)
    const notice = notices.find((one) => one.name === name || (one.name.endsWith('/*') && name.startsWith(one.name.slice(0, -1))))
    // Not every entry of a lock file says its licence.
    const own = packages[path]!.license?.replaceAll(/[()]/g, '')
    return notice === undefined || (own !== undefined && !notice.by.includes(own))
  })
  expect(missing.map(nameAt)).toEqual([])
})

it('the licences that ask for their text have it in full', () => {
  for (const words of [
    'Permission to use, copy, modify, and/or distribute this software', 'SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007',
    'OTHER DEALINGS IN THE FONT SOFTWARE.', 'This notice may not be removed or altered from any source distribution.', 'The above copyright notice and this permission notice shall be included in all',
  ]) expect(licence).toContain(words)
  const others = new Set(notices.flatMap(({ by }) => by.split(/[;,] /)).filter((by) => !/MIT|ISC|OFL-1\.1|Zlib|0BSD|Apache-2\.0/.test(by)))
  expect([...others]).toEqual([])
})
