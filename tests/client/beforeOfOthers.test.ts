import { describe, expect, it } from 'vitest'
import { SEES_PLAINLY, type Person } from '../../client/session/board.ts'
import { createBeforeOfOthers } from '../../client/session/beforeOfOthers.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'

const titled = (title: string) => ({ ...demoPlan, title })
const ines = (beforeKept: boolean): Person => ({
  seatId: 'ines', name: 'Ines', role: 'photographer', isSelf: false, hasPen: true, pointer: null, selection: null, inHand: null, lookId: null,
  sees: { ...SEES_PLAINLY, beforeKept },
})

describe('the Before of another person', () => {
  it('is the plan before their own last change, and not before somebody else\'s', () => {
    const others = createBeforeOfOthers()
    expect(others.of('ines')).toBeNull()
    others.changed(['ines'], titled('one'))
    others.changed(['tobin'], titled('two'))
    expect(others.of('ines')?.title).toBe('one')
  })

  it('is what they kept from when they keep it until they let go, and unknown where that was before this page', () => {
    const others = createBeforeOfOthers()
    others.people([ines(false)], titled('start'))
    others.changed(['ines'], titled('changed'))
    others.people([ines(true)], titled('kept'))
    others.people([ines(true)], titled('later'))
    expect(others.of('ines')?.title).toBe('kept')
    others.people([ines(false)], titled('later'))
    expect(others.of('ines')?.title).toBe('changed')
    const late = createBeforeOfOthers()
    late.people([ines(true)], titled('late'))
    late.changed(['ines'], titled('changed'))
    expect(late.of('ines')).toBeNull()
  })
})
