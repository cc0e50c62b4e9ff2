import { describe, expect, it } from 'vitest'
import { cornerClearOf } from '../../client/frame/eyes/cornerClearOf.ts'

const at = (frameX: number, frameY: number) => ({ frameX, frameY })

describe('the corner of the enlarged eyes', () => {
  it('is top left while nothing is there', () => {
    expect(cornerClearOf([], 0.4, 0.15)).toEqual({ side: 'left', edge: 'top' })
    expect(cornerClearOf([at(0.5, 0.5), at(0.9, 0.1)], 0.4, 0.15)).toEqual({ side: 'left', edge: 'top' })
  })

  it('leaves a corner that an area of the face lies in, or lies close to', () => {
    expect(cornerClearOf([at(0.2, 0.1)], 0.4, 0.15)).toEqual({ side: 'right', edge: 'top' })
    // Just below the box and just beside it.
    expect(cornerClearOf([at(0.2, 0.16)], 0.4, 0.15)).toEqual({ side: 'right', edge: 'top' })
    expect(cornerClearOf([at(0.41, 0.1)], 0.4, 0.15)).toEqual({ side: 'right', edge: 'top' })
    expect(cornerClearOf([at(0.2, 0.25)], 0.4, 0.15)).toEqual({ side: 'left', edge: 'top' })
  })

  it('goes down where the face fills the top, to the side that is free', () => {
    expect(cornerClearOf([at(0.2, 0.1), at(0.8, 0.1)], 0.4, 0.15)).toEqual({ side: 'left', edge: 'bottom' })
    expect(cornerClearOf([at(0.2, 0.1), at(0.8, 0.1), at(0.1, 0.95)], 0.4, 0.15)).toEqual({ side: 'right', edge: 'bottom' })
  })

  it('covers none of the places, wherever one corner is free', () => {
    const corners = [at(0.1, 0.05), at(0.9, 0.05), at(0.1, 0.95), at(0.9, 0.95)]
    corners.forEach((free) => {
      const { side, edge } = cornerClearOf(corners.filter((corner) => corner !== free), 0.4, 0.15)
      expect([side === 'left', edge === 'top']).toEqual([free.frameX < 0.5, free.frameY < 0.5])
    })
  })

  it('keeps farthest away where none is clear', () => {
    const crowded = [at(0.1, 0.02), at(0.9, 0.02), at(0.1, 0.98), at(0.61, 0.86)]
    expect(cornerClearOf(crowded, 0.4, 0.15)).toEqual({ side: 'right', edge: 'bottom' })
  })
})
