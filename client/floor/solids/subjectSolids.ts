import { add, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Subject } from '../../../shared-core/plan/schema/look.ts'
import { subjectForm, type Ellipsoid } from '../../../shared-core/set/subjectForm.ts'
import type { Solid, SolidPart } from './solid.ts'

type Part = Ellipsoid['part']

/**
 * Which parts are drawn as one body, low ones first: limbs run into one another, so that the figure is no row of beads.
 */
const BODIES: readonly { readonly cover: SolidPart; readonly of: readonly Part[] }[] = [
  { cover: 'cloth', of: ['hips', 'legs'] },
  { cover: 'cloth', of: ['torso', 'hips'] },
  { cover: 'cloth', of: ['shoulders', 'torso'] },
  { cover: 'flesh', of: ['neck'] },
  { cover: 'flesh', of: ['face', 'cranium'] },
]

/** How far a nose stands out from the place it is metered at; from memory. */
const NOSE_METRES = 0.012

/** The subject in true size as the core's light meets it, feet first. */
export function subjectSolids(subject: Subject): Solid[] {
  const { parts, areas } = subjectForm(subject)
  const pointsOf = (part: Part) => parts.filter((ellipsoid) => ellipsoid.part === part).flatMap(ellipsoidPoints)
  const bodies: Solid[] = BODIES.map(({ cover, of }) => ({ part: cover, points: of.flatMap(pointsOf) }))
  const arms: Solid[] = parts
    .filter(({ part }) => part === 'arm')
    .map((arm) => ({ part: 'cloth', points: [...ellipsoidPoints(arm), ...pointsOf('shoulders')] }))
  const nose = areas.find((area) => area.id === 'nose')
  const ridge = nose === undefined ? [] : [noseSolid(nose.place, nose.facing, parts)]
  return [...arms, ...bodies, ...ridge, { part: 'hair', points: pointsOf('hair') }]
}

function noseSolid(tip: Vector, facing: Vector, parts: readonly Ellipsoid[]): Solid {
  const side = scale(parts.find(({ part }) => part === 'face')?.axes[0] ?? [1, 0, 0], NOSE_METRES)
  const root = add(tip, scale(facing, -0.04))
  return { part: 'flesh', points: [add(tip, scale(facing, NOSE_METRES / 2)), add(root, side), add(root, scale(side, -1))] }
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
