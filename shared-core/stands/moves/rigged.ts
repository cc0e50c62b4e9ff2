import type { Backdrop, Camera, Light, Look, Piece } from '../../plan/schema/look.ts'

/** A light as it physically stands: what hands can change, without what it is for. */
export type RiggedLight = Pick<Light,
  'letter' | 'headId' | 'modifierId' | 'grid' | 'gelIds' | 'gelPlace' | 'place' | 'aim' | 'rollDegrees' | 'energyJoules' | 'support' | 'sandbag'
  | 'safetyCable' | 'circuitId'>

export type RiggedCamera = Pick<Camera, 'place' | 'aim' | 'focalLengthMillimetres' | 'fNumber' | 'shutterSeconds' | 'isoSpeed' | 'whiteBalanceKelvin'>

/** A set as it physically stands. Lights and pieces are keyed by the thing itself, which may serve as another light in the next look. */
export interface RiggedSet {
  readonly lights: Readonly<Record<string, RiggedLight>>
  readonly pieces: Readonly<Record<string, Piece>>
  readonly camera: RiggedCamera
  readonly backdrop: Omit<Backdrop, 'intent'>
  readonly mark: { readonly xMetres: number; readonly yMetres: number }
}

/** What one move does to the set; a thing set to null is carried off. */
export interface SetChange {
  readonly light?: { readonly thing: string; readonly set: Partial<RiggedLight> | null }
  readonly piece?: { readonly thing: string; readonly set: Piece | null }
  readonly camera?: Partial<RiggedCamera>
  readonly backdrop?: Omit<Backdrop, 'intent'>
  readonly mark?: RiggedSet['mark']
}

export function riggedLight({ letter, headId, modifierId, grid, gelIds, gelPlace, place, aim, rollDegrees, energyJoules, support, sandbag, safetyCable, circuitId }: Light): RiggedLight {
  return { letter, headId, modifierId, grid, gelIds, gelPlace, place, aim, rollDegrees, energyJoules, support, sandbag, safetyCable, circuitId }
}

/** The things of a look that stand: lights that are off are not rigged. */
export function riggedSet(look: Look): RiggedSet {
  const { place, aim, focalLengthMillimetres, fNumber, shutterSeconds, isoSpeed, whiteBalanceKelvin } = look.camera
  const { intent: _intent, ...backdrop } = look.backdrop
  return {
    lights: Object.fromEntries(Object.entries(look.lights).filter(([, { on }]) => on).map(([id, light]) => [id, riggedLight(light)])),
    pieces: look.pieces,
    camera: { place, aim, focalLengthMillimetres, fNumber, shutterSeconds, isoSpeed, whiteBalanceKelvin },
    backdrop,
    mark: { xMetres: look.subject.xMetres, yMetres: look.subject.yMetres },
  }
}

/** The set after one move. */
export function afterChange(set: RiggedSet, { light, piece, camera, backdrop, mark }: SetChange): RiggedSet {
  return {
    lights: light === undefined ? set.lights : put(set.lights, light.thing, light.set === null ? null : { ...set.lights[light.thing], ...light.set } as RiggedLight),
    pieces: piece === undefined ? set.pieces : put(set.pieces, piece.thing, piece.set),
    camera: { ...set.camera, ...camera },
    backdrop: backdrop ?? set.backdrop,
    mark: mark ?? set.mark,
  }
}

function put<Thing>(things: Readonly<Record<string, Thing>>, key: string, thing: Thing | null): Readonly<Record<string, Thing>> {
  const { [key]: _before, ...others } = things
  return thing === null ? others : { ...others, [key]: thing }
}
