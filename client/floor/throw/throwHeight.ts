/** At which height the Floor shows the throws: on the floor, or at the subject's head. */
export const throwHeights = ['head', 'floor'] as const
export type ThrowHeight = (typeof throwHeights)[number]
