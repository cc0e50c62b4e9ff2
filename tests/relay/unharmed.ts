import { expect } from 'vitest'
import type { Seated, TestRelay } from './openRelay.ts'
import { rawJoin, syncMessage, updateSetting, type RawPeer } from './rawPeer.ts'

/** The bystander is still there, hears a new edit, and the document holds just what honest people wrote. */
export async function expectUnharmed(relay: TestRelay, bystander: RawPeer, worker: Seated): Promise<void> {
  const working = await rawJoin(relay, worker)
  working.send(syncMessage(2, updateSetting('honest', 1)))
  await bystander.hear('change')
  expect((await bystander.document()).getMap('m').toJSON()).toEqual({ honest: 1 })
}
