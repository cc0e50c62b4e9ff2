import { describe, expect, it } from 'vitest'
import { explain } from '../../shared-core/ask/explain.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import { changeRoom, renameJob } from '../../shared-core/plan/edits/job.ts'
import { changeGel, changeHead, changeModifier } from '../../shared-core/plan/edits/kit.ts'
import {
  changeLight, chooseHead, duplicateLight, removeLight, setGels, setPower, switchLight,
} from '../../shared-core/plan/edits/lights.ts'
import { changeBackdrop, changeCamera, changeFinish, changeMeter, changeSubject } from '../../shared-core/plan/edits/look.ts'
import { mirrorLook } from '../../shared-core/plan/edits/mirror.ts'
import { addPiece, movePiece, removePiece } from '../../shared-core/plan/edits/pieces.ts'
import { aimLight, moveLight, turnLight } from '../../shared-core/plan/edits/placing.ts'
import type { Refusal } from '../../shared-core/plan/result.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'

const lookId = 'dusk-draft-1'
const predictor = createPredictor()
const before = predictor(demoPlan, lookId)
const a = demoPlan.looks[lookId]!.lights.a!

function line(result: { readonly ok: true; readonly edit: PlanEdit } | Refusal): string | null {
  if (!result.ok) throw new Error(result.message)
  const after = applyEdit(demoPlan, result.edit)
  return explain(demoPlan, after, lookId, before, predictor(after, lookId))
}

/** The first signed number of stops in a line. */
function stopsIn(text: string | null): number {
  return Number(/: ([+−]\d+\.\d)/.exec(text ?? '')![1]!.replace('−', '-'))
}

describe('one line for each edit', () => {
  it('says how much nearer, what it gained, and that it is softer', () => {
    // 1.14 m from the nose: two thirds of the way is a stop and a bit by the inverse square, less for a large front.
    const share = 0.66
    const toFace = (from: number, face: number) => face + (from - face) * share
    const nearer = line(moveLight(demoPlan, lookId, 'a', {
      xMetres: toFace(a.place.xMetres, 0), yMetres: toFace(a.place.yMetres, -0.1), zMetres: toFace(a.place.zMetres, 1.56),
    }))
    expect(nearer).toMatch(/^A \d\d cm nearer: \+\d\.\d on the camera-left \w+,.*softer$/)
    expect(stopsIn(nearer)).toBeGreaterThan(0.4)
    expect(stopsIn(nearer)).toBeLessThan(1.2)
  })

  it('power: twice the joules of the only light on a place is a stop there', () => {
    const alone = applyEdit(demoPlan, {
      name: 'switchLight', changes: ['b', 'c', 'd'].map((id) => ({ path: ['looks', lookId, 'lights', id, 'on'], set: false })),
    })
    const edit = setPower(alone, lookId, 'a', a.energyJoules * 2)
    const after = applyEdit(alone, (edit as { edit: PlanEdit }).edit)
    expect(explain(alone, after, lookId, predictor(alone, lookId), predictor(after, lookId))).toMatch(/^A power \+1\.0: \+1\.0 everywhere/)
  })

  it('aperture, speed and shutter move what the camera gets, by the numbers on the ring', () => {
    // f/8 to f/11 and ISO 200 to 400 are one stop each (ISO 2720); flash does not know of the shutter.
    expect(line(changeCamera(demoPlan, lookId, { fNumber: Math.SQRT2 ** 7 }))).toMatch(/^f\/11: −1\.0 everywhere/)
    expect(line(changeCamera(demoPlan, lookId, { isoSpeed: 400 }))).toMatch(/^ISO 400: \+1\.0 everywhere/)
    expect(line(changeCamera(demoPlan, lookId, { shutterSeconds: 1 / 125 }))).toBe('1/125 s: no visible change')
    expect(line(changeCamera(demoPlan, lookId, { focalLengthMillimetres: 70 }))).toMatch(/^70 mm: .*frame wider/)
    expect(line(changeCamera(demoPlan, lookId, { place: { yMetres: -1.8 } }))).toMatch(/^Camera \d+ cm nearer: .*frame tighter/)
    // A lower balance draws everything to blue (common practice, no source).
    expect(line(changeCamera(demoPlan, lookId, { whiteBalanceKelvin: 4_200 }))).toMatch(/^Balanced for 4200 K: .*(cool|lavender|violet|blue|sky)/)
  })

  const cases: readonly (readonly [name: string, of: () => string | null, says: RegExp])[] = [
    ['aim', () => line(aimLight(demoPlan, lookId, 'a', { xMetres: 0.6 })), /^A turned \d+°: /],
    ['turn', () => line(turnLight(demoPlan, lookId, 'a', { turnDegrees: 25 })), /^A turned \d+°: −/],
    ['gel', () => line(setGels(demoPlan, lookId, 'c', ['orange'])), /^C in Orange: .*from \w.* to .*(orange|amber|apricot|red)/],
    ['no gel', () => line(setGels(demoPlan, lookId, 'c', [])), /^C clear: \+/],
    ['off', () => line(switchLight(demoPlan, lookId, 'b', false)), /^B off: −/],
    ['light out', () => line(removeLight(demoPlan, lookId, 'c')), /^C taken out: −/],
    ['light in', () => line(duplicateLight(demoPlan, lookId, 'b')), /^E added: \+/],
    ['head', () => line(chooseHead(demoPlan, lookId, 'd', 'old-head-1000')), /^D on Old head 1000.*power \+0\.\d: \+0\.\d on the background/],
    ['modifier', () => line(changeLight(demoPlan, lookId, 'a', { modifierId: 'dish-55' })), /^A in Beauty dish 55: \+.*harder$/],
    ['grid', () => line(changeLight(demoPlan, lookId, 'a', { grid: { kind: 'none' } })), /^A without its grid: \+/],
    ['subject', () => line(changeSubject(demoPlan, lookId, { yMetres: 0.3 })), /^Subject 30 cm back: /],
    ['skin', () => line(changeSubject(demoPlan, lookId, { skinItaDegrees: -40 })), /^Deeper skin: .* (to|darker)/],
    ['sheen', () => line(changeSubject(demoPlan, lookId, { skinSheen: 0.8 })), /^Dewier skin: .*more shine on the skin$/],
    ['lips', () => line(changeSubject(demoPlan, lookId, { lips: '#c03030' })), /^Other lips: lips /],
    ['paper nearer', () => line(changeBackdrop(demoPlan, lookId, { yMetres: 1.6 })), /^Paper 80 cm nearer: \+\d\.\d on the background/],
    ['paper', () => line(changeBackdrop(demoPlan, lookId, { swatch: '#f0f0f0' })), /^Other paper: .*background/],
    ['finish', () => line(changeFinish(demoPlan, lookId, { exposureStops: 0.5 })), /^Finish: exposure \+0\.5: .*lighter/],
    ['receptor', () => line(changeMeter(demoPlan, lookId, { receptor: 'flat' })), /^Metered with the flat: /],
    ['piece out', () => line(removePiece(demoPlan, lookId, 'flag-b')), /^Black flag .* taken out: \+/],
    ['piece moved', () => line(movePiece(demoPlan, lookId, 'flag-b', { xMetres: 0.5 })), /^Black flag .* cm nearer: /],
    ['piece in', () => line(addPiece(demoPlan, lookId, { kind: 'board', place: { xMetres: 0.7, yMetres: -0.2, zMetres: 1.4 }, facingDegrees: -80 })), /^White board added: /],
    ['room', () => line(changeRoom(demoPlan, { surfaces: { leftWall: '#101010', rightWall: '#101010' } })), /^Other walls: −/],
    ['house lights', () => line(changeRoom(demoPlan, { ambientLux: 40_000 })), /^House lights 40000 lux: \+/],
    ['head of the kit', () => line(changeHead(demoPlan, 'head-1000', { learnedStops: 0.5 })), /^Head 1000, nine stops changed: \+0\.5 everywhere/],
    ['modifier of the kit', () => line(changeModifier(demoPlan, 'octa-100', { diffusers: 1 })), /^Octa 100 changed: \+/],
    ['gel of the kit', () => line(changeGel(demoPlan, 'violet', { source: { from: 'family', family: 'violet', density: 1.6 } })), /^Violet changed: −/],
    ['mirrored', () => line(mirrorLook(demoPlan, lookId)), /^A \d+ cm to camera right; .* more: /],
  ]
  for (const [name, of, says] of cases) {
    it(`${name}`, () => { expect(of()).toMatch(says) })
  }

  it('is quiet about what no light knows of', () => {
    expect(line(changeLight(demoPlan, lookId, 'a', { note: 'sandbag', wantedStops: 1, letter: 'K' }))).toBeNull()
    expect(line(renameJob(demoPlan, 'Another title'))).toBeNull()
    expect(line(changeBackdrop(demoPlan, lookId, { intent: 'free' }))).toBeNull()
    expect(line(changeGel(demoPlan, 'violet', { sheets: 9 }))).toBeNull()
  })
})
