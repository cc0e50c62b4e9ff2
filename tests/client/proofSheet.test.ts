import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { seenFrom } from '../../client/agree/proof/sameCrop.ts'
import { finishedAs, finishesDiffer, finishWords } from '../../client/agree/proof/sameFinish.ts'
import { MOST_TIMES, pannedBy, placeUnder, WHOLE, zoomedAt } from '../../client/agree/proof/zoom.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { cameraView } from '../../shared-core/set/camera.ts'
import { SceneStage } from '../../shared-core/predict/sceneOfLook.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(new Uint8Array(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url))))

describe('the zoom of all proofs', () => {
  it('keeps the place under the finger under it', () => {
    const near = zoomedAt(WHOLE, 2, 0.3, 0.4)
    expect(placeUnder(near, 0.3, 0.4).x).toBeCloseTo(0.3, 12)
    expect(placeUnder(near, 0.3, 0.4).y).toBeCloseTo(0.4, 12)
    const nearer = zoomedAt(near, 1.5, 0.6, 0.2)
    expect(placeUnder(nearer, 0.6, 0.2).x).toBeCloseTo(placeUnder(near, 0.6, 0.2).x, 12)
  })

  it('goes no further than the Frame and no nearer than its most', () => {
    expect(zoomedAt(WHOLE, 0.2, 0.9, 0.9)).toEqual(WHOLE)
    expect(zoomedAt(WHOLE, 100, 0.5, 0.5).times).toBe(MOST_TIMES)
    const corner = pannedBy(zoomedAt(WHOLE, 2, 0.5, 0.5), 9, 9)
    expect(placeUnder(corner, 0, 0)).toEqual({ x: 0, y: 0 })
  })

  it('moves what is seen as far as the hand: half a proof at two times is a quarter of the Frame', () => {
    const near = zoomedAt(WHOLE, 2, 0.5, 0.5)
    expect(pannedBy(near, 0.5, 0).x).toBeCloseTo(0.25, 12)
  })
})

describe('one crop', () => {
  const [first, second] = Object.keys(demoPlan.looks) as [string, string]
  const moved = { ...demoPlan, looks: { ...demoPlan.looks, [second]: { ...demoPlan.looks[second]!, camera: {
    ...demoPlan.looks[second]!.camera, focalLengthMillimetres: 50, sensorWidthMillimetres: 36, sensorHeightMillimetres: 24, fNumber: 11, isoSpeed: 400,
  } } } }
  const seen = seenFrom(moved, second, first)

  it('puts the same places of the set at the same places of the picture', () => {
    const stage = new SceneStage()
    const [own, other] = [cameraView(stage.of(demoPlan, demoPlan.looks[first]!).camera), cameraView(stage.of(seen, seen.looks[second]!).camera)]
    expect(other).toEqual(own)
  })

  it('leaves every look exposed as it was, and the other looks alone', () => {
    expect(seen.looks[second]!.camera).toMatchObject({ fNumber: 11, isoSpeed: 400 })
    expect(seen.looks[first]).toBe(demoPlan.looks[first])
  })
})

describe('one finish', () => {
  const [first, second] = Object.keys(demoPlan.looks) as [string, string]
  const finish = { ...demoPlan.looks[first]!.finish, exposureStops: demoPlan.looks[first]!.finish.exposureStops + 0.5, contrast: 0.1 }
  const apart = { ...demoPlan, looks: { ...demoPlan.looks, [second]: { ...demoPlan.looks[second]!, finish } } }
  const size = { width: 24, height: 36, soloLightId: null, coarse: true }

  it('is told where looks are finished differently, and nowhere else', () => {
    expect(finishesDiffer(demoPlan, [first, first])).toBe(false)
    expect(finishesDiffer(apart, [first, second])).toBe(true)
    expect(finishesDiffer(finishedAs(apart, second, first), [first, second])).toBe(false)
    expect(finishWords(finish)).toMatch(/^exposure \+0\.50, contrast \+10 %/)
    expect(finishWords({ exposureStops: 0, contrast: 0, whitePointStops: 0, blackPoint: 0 })).toBe('as shot')
  })

  it('leaves two looks of the same light and camera the same picture', () => {
    const twins = { ...demoPlan, looks: { [first]: demoPlan.looks[first]!, [second]: { ...demoPlan.looks[first]!, finish } } }
    const pictures = new LookPicture(asset)
    const pixels = (plan: Plan, lookId: string) => [...pictures.draw(plan, lookId, size).rgba]
    expect(pixels(twins, second)).not.toEqual(pixels(twins, first))
    expect(pixels(finishedAs(twins, second, first), second)).toEqual(pixels(twins, first))
  })
})
