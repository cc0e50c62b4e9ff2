import { useEffect, useMemo, useState } from 'react'
import { turnsOfPage } from '../../session/followUnhurried.ts'
import type { Obstacles } from './obstacles.ts'
import { throwField, type ThrowSource } from './throwField.ts'
import type { ThrowPlane } from './throwPlane.ts'

/** All that a light's throw over a plane follows from; the same object as long as none of it changes. */
export interface Throw {
  readonly source: ThrowSource
  readonly obstacles: Obstacles
  /** Light at the place served, without obstacles. */
  readonly reference: number
}

/** The same plane cut twice: for a throw under a hand, and for one at rest. */
export interface ThrowPlanes {
  readonly coarse: ThrowPlane
  readonly fine: ThrowPlane
}

export interface ThrowOnPlane {
  readonly plane: ThrowPlane
  readonly stops: Float32Array
}

/**
 * A throw in stops over the plane: coarse as soon as it changes, fine once nothing is in a hand and its turn has come. A
 * throw that another light's move leaves as it was stays as fine as it is.
 * @param thrown null for a light that throws nothing, and costs nothing
 */
export function useThrowField(thrown: Throw | null, planes: ThrowPlanes, inMotion: boolean): ThrowOnPlane | null {
  const [fine, setFine] = useState<(ThrowOnPlane & { readonly of: Throw }) | null>(null)
  const fineNow = thrown !== null && fine?.of === thrown && fine.plane === planes.fine ? fine : null
  const coarse = useMemo(
    () => (thrown === null || fineNow !== null ? null : onPlane(thrown, planes.coarse)),
    [thrown, planes.coarse, fineNow],
  )
  useEffect(() => {
    if (thrown === null || fineNow !== null || inMotion) return
    let isOver = false
    turnsOfPage.wait(() => {
      if (!isOver) setFine({ of: thrown, ...onPlane(thrown, planes.fine) })
    })
    return () => {
      isOver = true
    }
  }, [thrown, planes.fine, fineNow, inMotion])
  return fineNow ?? coarse
}

function onPlane({ source, obstacles, reference }: Throw, plane: ThrowPlane): ThrowOnPlane {
  return { plane, stops: throwField(source, plane, obstacles, reference) }
}
