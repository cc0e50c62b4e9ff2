import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import { addGel, addHead, changeHead, removeGel, removeHead } from '../../shared-core/plan/edits/kit.ts'
import { addLight, changeLight, chooseHead, duplicateLight, removeLight, setGels, setPower, switchLight } from '../../shared-core/plan/edits/lights.ts'
import { changeBackdrop, changeCamera, changeFinish, changeLook, changeSubject } from '../../shared-core/plan/edits/look.ts'
import { addLook, duplicateLook, removeLook } from '../../shared-core/plan/edits/looks.ts'
import { mirrorLook } from '../../shared-core/plan/edits/mirror.ts'
import { addPiece, changePiece, movePiece, removePiece } from '../../shared-core/plan/edits/pieces.ts'
import { aimLight, moveLight, turnLight } from '../../shared-core/plan/edits/placing.ts'
import { addPoint, removePoint } from '../../shared-core/plan/edits/points.ts'
import { changeRoom, renameJob } from '../../shared-core/plan/edits/job.ts'
import { acceptSnag, markTrueArea, reopenSnag, setUpByPlane } from '../../shared-core/plan/edits/snags.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/** Numbers in 0-1 from a number that starts them: the same start gives the same test, on every run. */
export function randomFrom(start: number): () => number {
  let state = start >>> 0
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

type Made = { readonly ok: true; readonly edit: PlanEdit } | { readonly ok: false; readonly message: string }

/** Any edit a person could make now, with values often out of bounds; null when the one drawn was refused. */
export function randomEdit(plan: Plan, random: () => number): PlanEdit | null {
  const pick = <Value>(values: readonly Value[]): Value | undefined => values[Math.floor(random() * values.length)]
  const key = (record: object | undefined): string => pick(Object.keys(record ?? {})) ?? 'nothing-there'
  const metres = () => (random() - 0.5) * (random() < 0.05 ? 1_000 : 8)
  const place = () => ({ xMetres: metres(), yMetres: metres(), zMetres: Math.abs(metres()) % 3 })
  const lookId = key(plan.looks)
  const look = plan.looks[lookId]
  const lightId = key(look?.lights)
  const pieceId = key(look?.pieces)
  const kinds: readonly (() => Made)[] = [
    () => moveLight(plan, lookId, lightId, { xMetres: metres() }),
    () => moveLight(plan, lookId, lightId, { yMetres: metres(), zMetres: metres() }, 'carry'),
    () => aimLight(plan, lookId, lightId, place()),
    () => turnLight(plan, lookId, lightId, { turnDegrees: random() * 720 - 360, tiltDegrees: random() * 200 - 100 }),
    () => setPower(plan, lookId, lightId, random() * 2_000),
    () => setGels(plan, lookId, lightId, [key(plan.gels)]),
    () => switchLight(plan, lookId, lightId, random() < 0.5),
    () => chooseHead(plan, lookId, lightId, key(plan.heads)),
    () => changeLight(plan, lookId, lightId, { note: 'n'.repeat(random() * 200), wantedStops: random() < 0.3 ? null : random() * 60 - 30, grid: { openingDegrees: random() * 150 } }),
    () => addLight(plan, lookId, { headId: key(plan.heads), modifierId: key(plan.modifiers), place: place(), aim: place() }),
    () => duplicateLight(plan, lookId, lightId),
    () => removeLight(plan, lookId, lightId),
    () => addPiece(plan, lookId, { kind: pick(['flag', 'v-flat', 'board', 'scrim'] as const) ?? 'flag', place: place() }),
    () => movePiece(plan, lookId, pieceId, place()),
    () => changePiece(plan, lookId, pieceId, { facingDegrees: random() * 1_000 - 500 }),
    () => removePiece(plan, lookId, pieceId),
    () => addPoint(plan, lookId, { place: place() }),
    () => removePoint(plan, lookId, key(look?.points)),
    () => changeCamera(plan, lookId, { fNumber: random() * 200, place: { zMetres: metres() } }),
    () => changeSubject(plan, lookId, { skinItaDegrees: random() * 200 - 100 }),
    () => changeBackdrop(plan, lookId, { yMetres: metres(), intent: pick(['glow', 'free'] as const) }),
    () => changeFinish(plan, lookId, { contrast: random() * 4 - 2 }),
    () => changeLook(plan, lookId, { name: `Look ${random()}` }),
    () => addLook(plan),
    () => duplicateLook(plan, lookId),
    () => removeLook(plan, lookId),
    () => mirrorLook(plan, lookId),
    () => addGel(plan, { name: 'New', source: { from: 'neutral', lossStops: random() * 10 }, sheets: 1 }),
    () => removeGel(plan, key(plan.gels)),
    () => addHead(plan, { fullEnergyJoules: 250 + random() * 1_000 }),
    () => changeHead(plan, key(plan.heads), { lowestEnergyJoules: random() * 100 }),
    () => removeHead(plan, key(plan.heads)),
    () => changeRoom(plan, { heightMetres: random() * 5, surfaces: { ceiling: '#202020' } }),
    () => acceptSnag(plan, lookId, { key: `spill:${lightId}:lips`, severity: 'look', value: random() * 4, message: 'm'.repeat(random() * 400) }, 'Ines', 1),
    () => reopenSnag(plan, lookId, key(look?.accepted)),
    () => markTrueArea(plan, lookId, pick(['lips', 'cheek-left', 'nowhere']) ?? ''),
    () => setUpByPlane(plan, lookId),
    () => renameJob(plan, `Job ${random()}`),
  ]
  const made = pick(kinds)?.()
  return made?.ok ? made.edit : null
}
