import { describe, expect, it } from 'vitest'
import { dot, length, subtract } from '../../shared-core/arithmetic/vector.ts'
import { backgroundAreas, behindAt } from '../../shared-core/set/behind.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import { cameraView, frameSizeAt, framePositionOf, isInFrame, sightThrough } from '../../shared-core/set/camera.ts'
import { emittersOf } from '../../shared-core/set/emitter.ts'
import { facingOf, panelCorners, panelsOf } from '../../shared-core/set/panels.ts'
import { roomBox } from '../../shared-core/set/room.ts'
import { aLight, aPiece, at, studioScene } from './studioScene.ts'

describe('the camera of the demo job (its frame worked by hand: sensor x distance / focal length)', () => {
  const view = cameraView(studioScene().camera)

  it('frames 0.59 x 0.89 m at the subject and 1.27 x 1.91 m at the paper', () => {
    const atSubject = frameSizeAt(view, framePositionOf(view, [0, 0, 1.52]).depthMetres)
    expect(atSubject.widthMetres).toBeCloseTo(0.59, 2)
    expect(atSubject.heightMetres).toBeCloseTo(0.89, 2)
    const atPaper = frameSizeAt(view, framePositionOf(view, [0, 2.4, 1.634]).depthMetres)
    expect(atPaper.widthMetres).toBeCloseTo(1.27, 2)
    expect(atPaper.heightMetres).toBeCloseTo(1.91, 2)
  })

  it('looks 2.7 degrees up and sees the paper from 0.68 to 2.59 m', () => {
    expect((Math.asin(view.ahead[2]) * 180) / Math.PI).toBeCloseTo(2.7, 1)
    expect(behindAt(studioScene(), 0.5, 1).place[2]).toBeCloseTo(0.68, 1)
    expect(behindAt(studioScene(), 0.5, 0).place[2]).toBeCloseTo(2.59, 1)
  })

  it('takes a place to the frame and back', () => {
    for (const place of [[0.2, 0.1, 1.4], [-0.5, 2, 2.2], [0.1, -1, 1.5]] as const) {
      const { frameX, frameY } = framePositionOf(view, place)
      const sight = sightThrough(view, frameX, frameY)
      const from = subtract(place, view.place)
      expect(dot(sight, from) / length(from)).toBeCloseTo(1, 12)
    }
    expect(framePositionOf(view, [-0.1, 0, 1.52]).frameX).toBeLessThan(0.5)
    expect(framePositionOf(view, [0, 0, 1.7]).frameY).toBeLessThan(0.5)
    expect(isInFrame(framePositionOf(view, [0, -4, 1.4]))).toBe(false)
  })
})

describe('what lies behind', () => {
  it('the paper, and the rear wall where there is none', () => {
    const paper = behindAt(studioScene(), 0.5, 0.5)
    expect(paper).toMatchObject({ kind: 'paper', surfaceId: 'backdrop', lightId: null, facing: [0, -1, 0] })
    expect(paper.place[1]).toBeCloseTo(2.4, 9)
    const bare = studioScene()
    const wall = behindAt({ ...bare, backdrop: { ...bare.backdrop, kind: 'none' } }, 0.5, 0.5)
    expect(wall).toMatchObject({ kind: 'wall', surfaceId: 'rearWall' })
    expect(wall.place[1]).toBeCloseTo(2.9, 9)
  })

  it('a lit box that faces the camera, but not one seen from its back', () => {
    const box = { kind: 'softbox', widthMetres: 1.2, heightMetres: 1.2, depthMetres: 0.4, diffusers: 2 } as const
    const towards = studioScene({ lights: [aLight('box', { place: at(0, 0.8, 1.5), aim: at(0, -2, 1.45), modifier: box })] })
    expect(behindAt(towards, 0.5, 0.5)).toMatchObject({ kind: 'front', lightId: 'box', surfaceId: null })
    const away = studioScene({ lights: [aLight('box', { place: at(0, 0.8, 1.5), aim: at(0, 3, 1.5), modifier: box })] })
    expect(behindAt(away, 0.5, 0.5).kind).toBe('paper')
  })

  it('a scrim across the picture, with its side to the camera', () => {
    const scrim = aPiece('s', {
      kind: 'scrim', place: at(0, 0.75, 1.5), facingDegrees: 0, widthMetres: 1.8, heightMetres: 1.8, transmittance: 0.3,
    })
    expect(behindAt(studioScene({ pieces: [scrim] }), 0.5, 0.5)).toMatchObject({ kind: 'piece', surfaceId: 'piece:s:front' })
    expect(behindAt(studioScene({ pieces: [{ ...scrim, facingDegrees: 180 }] }), 0.5, 0.5).surfaceId).toBe('piece:s:back')
  })

  it('past the edge of a narrow paper the wall, on the floor the sweep', () => {
    const scene = studioScene()
    const narrow = { ...scene, backdrop: { ...scene.backdrop, widthMetres: 1 } }
    expect(backgroundAreas(narrow).map(({ behind }) => behind.kind)).toEqual(['paper', 'wall', 'wall', 'wall', 'wall'])
    const wide = { ...scene, camera: { ...scene.camera, focalLengthMillimetres: 24 } }
    expect(behindAt(wide, 0.5, 0.9)).toMatchObject({ kind: 'wall', surfaceId: 'floor' })
    const down = { ...wide, camera: { ...wide.camera, aim: at(0, 1.5, 0) } }
    expect(behindAt(down, 0.5, 0.5)).toMatchObject({ kind: 'paper', facing: [0, 0, 1] })
  })

  it('names five places, the corners inside the frame', () => {
    const areas = backgroundAreas(studioScene())
    expect(areas).toHaveLength(5)
    const left = areas.find(({ id }) => id === 'background-top-left')!
    const right = areas.find(({ id }) => id === 'background-bottom-right')!
    expect(left.behind.place[0]).toBeLessThan(0)
    expect(left.behind.place[2]).toBeGreaterThan(right.behind.place[2])
    expect(right.behind.place[0]).toBeGreaterThan(0)
  })
})

describe('fronts', () => {
  it('lie level across, centred on their place, facing their aim', () => {
    const box = { kind: 'softbox', widthMetres: 0.9, heightMetres: 1.2, depthMetres: 0.4, diffusers: 2 } as const
    const [front] = emittersOf(aLight('x', { modifier: box }))
    expect(front!.across[2]).toBeCloseTo(0, 12)
    expect(front!.up[2]).toBeGreaterThan(0)
    expect(dot(front!.across, front!.axis)).toBeCloseTo(0, 12)
    expect(front!.areaSquareMetres).toBeCloseTo(1.08, 12)
    const mean = [0, 1, 2].map((k) => front!.outline.reduce((sum, corner) => sum + corner[k]!, 0) / 4)
    expect(mean).toEqual([-0.75, -0.8, 2.05].map((c) => expect.closeTo(c, 12)))
  })

  it('keep the area of a disc and of an octagon across its flats', () => {
    const area = (kind: 'octa' | 'umbrella-white') => emittersOf(aLight('x', {
      modifier: { kind, widthMetres: 1, heightMetres: 0.3, depthMetres: 0.4, diffusers: 2 },
    }))[0]!.areaSquareMetres
    expect(area('umbrella-white')).toBeCloseTo(Math.PI / 4, 12)
    expect(area('octa')).toBeCloseTo(2 * (Math.SQRT2 - 1), 12)
  })

  it('roll, and still stand when they shine straight down', () => {
    const strip = { kind: 'strip', widthMetres: 0.35, heightMetres: 1.4, depthMetres: 0.4, diffusers: 2 } as const
    const [rolled] = emittersOf(aLight('x', { place: at(0, -1, 1.5), aim: at(0, 0, 1.5), rollDegrees: 90, modifier: strip }))
    expect(Math.abs(rolled!.up[2])).toBeCloseTo(0, 12)
    const [down] = emittersOf(aLight('x', { place: at(0, 0, 2.5), aim: at(0, 0, 0), modifier: strip }))
    expect(down!.axis).toEqual([0, 0, -1].map((c) => expect.closeTo(c, 12)))
    expect(length(down!.across)).toBeCloseTo(1, 12)
  })
})

describe('pieces', () => {
  it('face 0 to the camera, 90 to camera right, tipped up when positive', () => {
    expect(facingOf(0, 0)).toEqual([0, -1, 0].map((c) => expect.closeTo(c, 12)))
    expect(facingOf(90, 0)).toEqual([1, 0, 0].map((c) => expect.closeTo(c, 12)))
    expect(facingOf(0, 30)[2]).toBeCloseTo(0.5, 12)
  })

  it('a V-flat is two leaves from one hinge, open by its angle, its inside in front', () => {
    const piece = aPiece('v', {
      kind: 'v-flat', place: at(1, 0, 1.2), facingDegrees: 0, openDegrees: 90, widthMetres: 1.2, heightMetres: 2.4,
    })
    const leaves = panelsOf(piece)
    expect(leaves).toHaveLength(2)
    expect(dot(leaves[0]!.normal, leaves[1]!.normal)).toBeCloseTo(0, 12)
    for (const leaf of leaves) {
      expect(dot(leaf.normal, [0, -1, 0])).toBeGreaterThan(0.7)
      const atHinge = panelCorners(leaf).filter(([x, y]) => Math.hypot(x - 1, y) < 1e-9)
      expect(atHinge).toHaveLength(2)
      const ends = panelCorners(leaf).filter(([x, y]) => Math.abs(Math.hypot(x - 1, y) - 1.2) < 1e-9)
      expect(ends.every(([, y]) => y < 0)).toBe(true)
    }
  })
})

describe('the room', () => {
  it('is taped from the subject\'s mark', () => {
    expect(roomBox(studioScene().room)).toEqual({
      left: -2.8, right: expect.closeTo(2.8, 12), rear: 2.9, front: expect.closeTo(-5.5, 12), height: 3.2,
    })
  })

  it('is built once for the same objects, and keeps its surroundings when only a light moves', () => {
    const scene = studioScene()
    expect(builtSet(scene)).toBe(builtSet(scene))
    const moved = { ...scene, lights: [...scene.lights.slice(1), aLight('a', { place: at(-1, -1, 2) })] }
    expect(builtSet(moved).surroundings).toBe(builtSet(scene).surroundings)
    const turned = { ...scene, subject: { ...scene.subject, turnDegrees: 10 } }
    expect(builtSet(turned).surroundings).not.toBe(builtSet(scene).surroundings)
  })
})
