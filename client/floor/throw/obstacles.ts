import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { Room } from '../../../shared-core/plan/schema/room.ts'
import { Occluders } from '../../../shared-core/set/occluders.ts'
import { panelsOf, type Panel } from '../../../shared-core/set/panels.ts'
import { paperPanel } from '../../../shared-core/set/room.ts'
import { subjectForm } from '../../../shared-core/set/subjectForm.ts'

/** What stands in a throw's way: bodies and plates that stop it, and cloth that lets a share through. */
export interface Obstacles {
  readonly solid: Occluders
  readonly cloths: readonly { readonly occluders: Occluders; readonly transmittance: number }[]
}

/** Subject, paper, pieces and columns as the core blocks light with them; the lights' own bodies do not count here. */
export function obstaclesOf(look: Pick<Look, 'pieces' | 'subject' | 'backdrop'>, room: Room): Obstacles {
  const paper = paperPanel(look.backdrop)
  const pieces = Object.entries(look.pieces)
  const stopping = pieces.filter(([, piece]) => piece.kind !== 'scrim').flatMap(([id, piece]) => panelsOf({ id, ...piece }))
  const panels = [...stopping, ...(paper === null ? [] : [paper]), ...columnPanels(room)]
  return {
    solid: new Occluders(subjectForm(look.subject).parts, panels, []),
    cloths: pieces
      .filter(([, piece]) => piece.kind === 'scrim')
      .map(([id, piece]) => ({ occluders: new Occluders([], panelsOf({ id, ...piece }), []), transmittance: piece.transmittance })),
  }
}

/** The two upright planes through the middle of each column: from any side its shadow is as wide as it is. */
function columnPanels({ columns, heightMetres }: Room): Panel[] {
  return Object.values(columns).flatMap(({ xMetres, yMetres, widthMetres, depthMetres }): Panel[] => {
    const upright = { centre: [xMetres, yMetres, heightMetres / 2], up: [0, 0, 1], halfHeightMetres: heightMetres / 2 } as const
    return [
      { ...upright, across: [1, 0, 0], normal: [0, -1, 0], halfWidthMetres: widthMetres / 2 },
      { ...upright, across: [0, 1, 0], normal: [1, 0, 0], halfWidthMetres: depthMetres / 2 },
    ]
  })
}
