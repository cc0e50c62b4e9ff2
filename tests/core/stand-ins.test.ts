import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { drawStandIns, standIns } from '../../shared-core/predict/standIns.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))

describe('the row of stand-ins', () => {
  const row = drawStandIns(new LookPicture(asset), demoPlan, 'dusk', { width: 48, height: 72, soloLightId: null, coarse: true })

  it('runs from very fair to very deep, each darker on the face than the one before', () => {
    const cheek = row.map(({ picture: { linear, width } }) => linear[3 * (30 * width + 20) + 1]!)
    expect(cheek).toHaveLength(5)
    cheek.slice(1).forEach((level, i) => expect(level, standIns[i + 1]!.words).toBeLessThan(cheek[i]!))
  })

  it('changes the person and nothing behind', () => {
    const corner = row.map(({ picture: { linear } }) => [...linear.slice(0, 3)])
    corner.slice(1).forEach((channels) => expect(channels).toEqual(corner[0]))
  })
})
