import type { Light } from '../schema/look.ts'

/** What a light is until somebody says otherwise, apart from what it stands on and where. */
export const usualLight: Omit<
  Light,
  'letter' | 'setUpOrder' | 'headId' | 'modifierId' | 'place' | 'aim' | 'energyJoules'
> = {
  on: true,
  grid: { kind: 'none', openingDegrees: 40 },
  rollDegrees: 0,
  gelIds: [],
  gelPlace: 'at-the-head',
  support: 'stand',
  sandbag: false,
  safetyCable: false,
  circuitId: '',
  plane: 'front',
  serves: 'nose',
  wantedStops: null,
  note: '',
}
