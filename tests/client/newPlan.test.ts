import { describe, expect, it } from 'vitest'
import { predict } from '../../shared-core/predict/predict.ts'
import { readPlan } from '../../shared-core/plan/read.ts'
import { newPlan } from '../../client/session/newPlan.ts'

describe('a new job', () => {
  const plan = newPlan('Another job')

  it('is a plan that the reader takes without a problem', () => {
    expect(readPlan(plan)).toEqual({ ok: true, plan, repairs: [] })
  })

  it('has a key light to begin with, and it reaches the nose', () => {
    const [lookId = ''] = Object.keys(plan.looks)
    const [key] = predict(plan, lookId).lights
    expect(key?.letter).toBe('A')
    expect(key?.level.luxSeconds).toBeGreaterThan(0)
  })
})
