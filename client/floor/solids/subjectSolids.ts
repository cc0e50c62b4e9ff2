import { add, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Subject } from '../../../shared-core/plan/schema/look.ts'
import { subjectForm, type Ellipsoid } from '../../../shared-core/set/subjectForm.ts'
import type { Solid, SolidPart } from './solid.ts'

const COVER: Readonly<Record<Ellipsoid['part'], SolidPart>> = {
  legs: 'cloth', hips: 'cloth', torso: 'cloth', arm: 'cloth', shoulders: 'cloth', neck: 'flesh', face: 'flesh', cranium: 'flesh', hair: 'hair',
}
/** Low before high, so that seen from above the head lies on the shoulders. */
const ORDER = Object.keys(COVER) as Ellipsoid['part'][]

/** How far a nose stands out from the place it is metered at; from memory. */
const NOSE_METRES = 0.012

/** The subject in true size as the core's light meets it, feet first. */
export function subjectSolids(subject: Subject): Solid[] {
  const form = subjectForm(subject)
  const parts = ORDER.flatMap((part) => form.parts.filter((ellipsoid) => ellipsoid.part === part))
  const solids: Solid[] = parts.map((ellipsoid) => ({ part: COVER[ellipsoid.part], points: ellipsoidPoints(ellipsoid) }))
  const nose = form.areas.find((area) => area.id === 'nose')
  if (nose === undefined) return solids
  const face = parts.find((ellipsoid) => ellipsoid.part === 'face')
  const side = scale(face?.axes[0] ?? [1, 0, 0], NOSE_METRES)
  const root = add(nose.place, scale(nose.facing, -0.04))
  const ridge: Solid = { part: 'flesh', points: [add(nose.place, scale(nose.facing, NOSE_METRES / 2)), add(root, side), add(root, scale(side, -1))] }
  return [...solids.slice(0, -1), ridge, ...solids.slice(-1)]
}

function ellipsoidPoints({ centre, axes, semiAxesMetres }: Ellipsoid): Vector[] {
  const rings = [-0.995, -0.9, -0.7, -0.4, 0, 0.4, 0.7, 0.9, 0.995]
  return rings.flatMap((height) => {
    const size = Math.sqrt(1 - height * height)
    return Array.from({ length: 20 }, (_, i) => {
      const angle = (i * Math.PI) / 10
      return add(
        add(centre, scale(axes[2], height * semiAxesMetres[2])),
        add(
          scale(axes[0], size * Math.cos(angle) * semiAxesMetres[0]),
          scale(axes[1], size * Math.sin(angle) * semiAxesMetres[1]),
        ),
      )
    })
  })
}
