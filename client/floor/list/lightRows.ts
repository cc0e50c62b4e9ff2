import { distance, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import { changeLight } from '../../../shared-core/plan/edits/lights.ts'
import { aimLight, moveLight, turnLight } from '../../../shared-core/plan/edits/placing.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import type { Place } from '../../../shared-core/plan/schema/quantities.ts'
import { vectorOf } from '../../../shared-core/set/emitter.ts'
import { aimedOrientation, elevationDegrees, facingDegreesOf } from '../solids/orientation.ts'
import { placeAtDistance, type NumberRow, type ThingNumber } from './numbers.ts'

/** A light with the place it is metered at. */
export interface LightColumn {
  readonly id: string
  readonly light: Light
  readonly served: Vector | null
}

const axes = [
  ['xMetres', 'Right of T', 'to camera right of the T'],
  ['yMetres', 'Behind T', 'behind the T, towards the backdrop'],
  ['zMetres', 'Up', 'centre of the front above the floor'],
] as const satisfies readonly (readonly [keyof Place, string, string])[]

const placeRows: readonly NumberRow<LightColumn>[] = axes.map(([axis, label, spoken]) => ({
  label,
  spoken,
  numberOf: ({ id, light }) => metres(light.place[axis], (plan, lookId, value) => moveLight(plan, lookId, id, { [axis]: value })),
}))

const aimRows: readonly NumberRow<LightColumn>[] = axes.map(([axis, label]) => ({
  label: `Aim ${label.charAt(0).toLowerCase()}${label.slice(1)}`,
  spoken: `aim, ${label.charAt(0).toLowerCase()}${label.slice(1)}`,
  numberOf: ({ id, light }) => metres(light.aim[axis], (plan, lookId, value) => aimLight(plan, lookId, id, { [axis]: value })),
}))

/** Every number of a light's stand, in the order they are taped out. */
export const lightRows: readonly NumberRow<LightColumn>[] = [
  {
    label: 'Front to place',
    spoken: 'from its front to the place it lights',
    numberOf: ({ id, light, served }) => {
      if (served === null) return null
      return metres(distance(vectorOf(light.place), served), (plan, lookId, value) => {
        const moved = placeAtDistance(vectorOf(light.place), served, value)
        if (!moved.ok) return moved
        const [xMetres, yMetres, zMetres] = moved.place
        return moveLight(plan, lookId, id, { xMetres, yMetres, zMetres })
      })
    },
  },
  ...placeRows,
  {
    label: 'Turn',
    spoken: 'turned, 0 to the camera and 90 to camera right',
    numberOf: ({ id, light }) => {
      const facing = Math.round(facingDegreesOf(aimedOrientation(light.place, light.aim).axis) * 10) / 10
      return degrees(facing, (plan, lookId, value) => turnLight(plan, lookId, id, { turnDegrees: facing - value }))
    },
  },
  {
    label: 'Tilt',
    spoken: 'tilt, up is positive',
    numberOf: ({ id, light }) => {
      const tilt = Math.round(elevationDegrees(aimedOrientation(light.place, light.aim).axis) * 10) / 10
      return degrees(tilt, (plan, lookId, value) => turnLight(plan, lookId, id, { tiltDegrees: value - tilt }))
    },
  },
  {
    label: 'Roll',
    spoken: 'rolled about its axis, clockwise from behind',
    numberOf: ({ id, light }) => degrees(light.rollDegrees, (plan, lookId, rollDegrees) => changeLight(plan, lookId, id, { rollDegrees })),
  },
  ...aimRows,
]

function metres(value: number, edit: ThingNumber['edit']): ThingNumber {
  return { value, unit: 'metres', edit }
}

function degrees(value: number, edit: ThingNumber['edit']): ThingNumber {
  return { value, unit: 'degrees', edit }
}
