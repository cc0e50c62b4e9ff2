import { describe, expect, it } from 'vitest'
import { AskBench } from '../../client/ask/askBench.ts'
import { AskDesk, type AskWorker } from '../../client/ask/askDesk.ts'
import type { AnswerFound, AskOrder, LooksFound } from '../../client/ask/askOrders.ts'
import { demoLookId as lookId, demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Want } from '../../shared-core/ask/want.ts'

const nose: Want = { kind: 'area-level', areaId: 'nose', stops: 0.5 }

/** A worker in this process that goes on only when it is told to. */
function steppedWorker() {
  const sent: string[] = []
  const worker: AskWorker = { postMessage: (message) => { sent.push(message.do); bench.hear(structuredClone(message)) }, onmessage: null, onerror: null }
  const bench = new AskBench((data) => worker.onmessage?.({ data: structuredClone(data) } as MessageEvent))
  return { worker, sent, step: () => bench.step(), run: () => { while (bench.step()); } }
}

const asking = (slot: string, stops: number, more: Partial<AskOrder<'ask'>> = {}): AskOrder<'ask'> =>
  ({ slot, kind: 'ask', plan, lookId, wants: [{ ...nose, stops } as Want], isPowersOnly: true, ...more })

describe('the desk that hands questions to a worker', () => {
  it('starts no worker before something is asked', () => {
    let started = 0
    const stepped = steppedWorker()
    const desk = new AskDesk(() => { started++; return stepped.worker })
    desk.hand(true)
    desk.hand(false)
    desk.cancel('a')
    expect(started).toBe(0)
    desk.order<'ask'>(asking('a', 0), { answered: () => undefined, failed: () => undefined })
    expect(started).toBe(1)
  })

  it('starts no worker under a hand for what can wait', () => {
    let started = 0
    const stepped = steppedWorker()
    const desk = new AskDesk(() => { started++; return stepped.worker })
    desk.hand(true)
    desk.order<'ask'>(asking('given up', 0), { answered: () => undefined, failed: () => undefined })
    desk.order<'ask'>(asking('kept', 0), { answered: () => undefined, failed: () => undefined })
    desk.cancel('given up')
    expect(started).toBe(0)
    desk.hand(false)
    expect(started).toBe(1)
    expect(stepped.sent).toEqual(['take'])
  })

  it('tells an older order of the slot nothing more', () => {
    const { worker, run } = steppedWorker()
    const desk = new AskDesk(() => worker)
    const heard: string[] = []
    const wait = (name: string) => ({ answered: (answer: AnswerFound) => heard.push(`${name}: ${answer.ways[0]!.outcomes[0]!.want.kind === 'area-level'}`), failed: heard.push.bind(heard) })
    desk.order<'ask'>(asking('a', 0), wait('older'))
    desk.order<'ask'>(asking('a', 0.5), wait('newer'))
    desk.order<'ask'>(asking('b', 0.5), wait('beside'))
    desk.cancel('b')
    run()
    expect(heard).toEqual(['newer: true'])
  })

  it('leaves everything but what the hand itself asks while a hand is on the page', () => {
    const { worker, run } = steppedWorker()
    const desk = new AskDesk(() => worker)
    const heard: string[] = []
    const wait = (name: string) => ({ answered: () => void heard.push(name), failed: (words: string) => void heard.push(words) })
    desk.hand(true)
    desk.order<'what-matters'>({ slot: 'background', kind: 'what-matters', plan, lookId }, wait('background'))
    desk.order<'ask'>(asking('hand', 0.3, { isUnderHand: true }), wait('hand'))
    run()
    expect(heard).toEqual(['hand'])
    desk.hand(false)
    run()
    expect(heard).toEqual(['hand', 'background'])
  }, 60_000)

  it('answers with what it has when it is stopped, and says how far it is', () => {
    const { worker, step, run } = steppedWorker()
    const desk = new AskDesk(() => worker)
    const shares: number[] = []
    let found: LooksFound | null = null
    desk.order<'fewer-heads'>({ slot: 'a', kind: 'fewer-heads', plan, lookId, lack: { kind: 'heads', count: 3 } }, {
      answered: (answer) => { found = answer }, failed: (words) => expect.fail(words), progress: (share) => shares.push(share),
    })
    step()
    step()
    step()
    desk.stop('a')
    run()
    const { best, others } = found as unknown as LooksFound
    expect([best, ...others]).toHaveLength(2)
    expect(shares[0]).toBe(0)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    expect(shares.at(-1)).toBeLessThan(1)
  })

  it('says in words what went wrong, and goes on with the next', () => {
    const { worker, run } = steppedWorker()
    const desk = new AskDesk(() => worker)
    const heard: string[] = []
    desk.order<'ask'>({ ...asking('a', 0), lookId: 'gone' }, { answered: () => heard.push('answered'), failed: (words) => heard.push(words) })
    desk.order<'ask'>(asking('b', 0), { answered: () => heard.push('answered'), failed: (words) => heard.push(words) })
    run()
    expect(heard).toHaveLength(2)
    expect(heard[0]).toContain('gone')
    expect(heard[1]).toBe('answered')
  })

  it('says so where workers cannot run', () => {
    const desk = new AskDesk(() => { throw new Error('no workers here') })
    const heard: string[] = []
    desk.order<'ask'>(asking('a', 0), { answered: () => undefined, failed: (words) => heard.push(words) })
    expect(heard[0]).toMatch(/^This browser cannot/)
  })
})
