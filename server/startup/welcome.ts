import { networkInterfaces } from 'node:os'
import { ROLES } from '../access/role.ts'
import type { OpenDemo } from '../http/routes/demo.ts'
import type { Settings } from '../settings.ts'

/** What the terminal says once the relay is open: where, and the demo job's three links. */
export function welcomeText(origin: string, settings: Settings, demo: OpenDemo | null): string {
  const address = settings.PUBLIC_ORIGIN === '' && isEverywhere(settings.HOST) ? networkAddress(origin) : origin
  const lines = ['', `Halfstop is open: ${origin}/`, '']
  if (demo !== null) {
    lines.push('The demo job, one link for each person (a link is a key: give it to nobody else):')
    lines.push(...ROLES.map((role) => `  ${role.padEnd(12)}  ${address}/j/${demo.jobId}#${demo.keys[role]}`), '')
  }
  if (!address.startsWith('https:') && address !== origin) {
    lines.push('Without TLS other devices can join, but keep no offline copy. TLS_CERT and TLS_KEY change that.', '')
  }
  lines.push('Stop with Ctrl+C.', '')
  return lines.join('\n')
}

function isEverywhere(host: string): boolean {
  return host === '0.0.0.0' || host === '::'
}

/** The same origin by an address that other devices on the network can type. */
function networkAddress(origin: string): string {
  const outside = Object.values(networkInterfaces()).flat().find((each) => each?.family === 'IPv4' && !each.internal)
  return outside === undefined ? origin : origin.replace('localhost', outside.address)
}
