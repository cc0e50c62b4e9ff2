import { describe, expect, it } from 'vitest'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { openRelay } from './openRelay.ts'
import { presenceMessage, rawJoin } from './rawPeer.ts'
import { expectUnharmed } from './unharmed.ts'

describe('presence', () => {
  it('cannot be forged: neither another’s seat, nor another’s state, nor the relay’s word', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const watching = await rawJoin(relay, assistant)
    const victim = await rawJoin(relay, photographer)
    victim.send(presenceMessage({ clientId: 100, clock: 5, state: { pointer: 'mine' } }))
    await watching.hear('presence', ({ states }) => states.has(100))
    const attacker = await rawJoin(relay, client)
    const [relayId] = [...(await attacker.hear('presence')).states.keys()] as [number]
    attacker.send(presenceMessage(
      { clientId: 100, clock: 90, state: { pointer: 'stolen' } },
      { clientId: relayId, clock: 1_000_000, state: { relay: { pen: { seatId: client.seatId, name: 'Pell' }, notKept: null } } },
      { clientId: 200, clock: 1, state: { seat: { seatId: photographer.seatId, name: 'Ines', role: 'photographer' }, relay: { notKept: 'lies' } } },
    ))
    await watching.hear('presence', ({ states }) => states.has(200))
    expect(watching.stateOf(200)).toEqual({ seat: { seatId: client.seatId, name: 'Pell', role: 'client' } })
    expect(watching.stateOf(100)).toMatchObject({ pointer: 'mine', seat: { seatId: photographer.seatId } })
    expect(watching.stateOf(relayId)).toEqual({ relay: { pen: null, notKept: null } })
  })

  it('of others cannot be removed, not even after they went and with a late echo', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const watching = await rawJoin(relay, assistant)
    const victim = await rawJoin(relay, photographer)
    const attacker = await rawJoin(relay, client)
    victim.send(presenceMessage({ clientId: 100, clock: 5, state: { here: true } }))
    await watching.hear('presence', ({ states }) => states.has(100))
    attacker.send(presenceMessage({ clientId: 100, clock: 5, state: null }, { clientId: 100, clock: 6, state: null }, { clientId: 300, clock: 1, state: {} }))
    await watching.hear('presence', ({ states }) => states.has(300))
    expect(watching.stateOf(100)).toMatchObject({ here: true })
    victim.socket.close()
    await watching.hear('presence', ({ states }) => states.get(100)?.state === null)
    attacker.send(presenceMessage({ clientId: 100, clock: 7, state: { ghost: true } }, { clientId: 300, clock: 2, state: { again: true } }))
    await watching.hear('presence', ({ states }) => states.get(300)?.clock === 2)
    expect(watching.stateOf(100)).toBeUndefined()
  })

  it('of one connection is a few entries, not a crowd', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const watching = await rawJoin(relay, photographer)
    const attacker = await rawJoin(relay, client)
    attacker.send(presenceMessage(...Array.from({ length: 500 }, (_, index) => ({ clientId: 1_000 + index, clock: 1, state: {} }))))
    const { states } = await watching.hear('presence', (heard) => heard.states.has(1_000))
    expect(states.size).toBeLessThanOrEqual(5)
  })

  it('nested too deep to be written again ends the connection, others unharmed', async () => {
    const relay = await openRelay({ MAX_PRESENCE_BYTES: 1_000_000 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    attacker.send(presenceMessage({ clientId: 5, clock: 1, state: `{"a":${'['.repeat(200_000)}${']'.repeat(200_000)}}` }))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.badFrame.code)
    await expectUnharmed(relay, bystander, photographer)
  })
})
