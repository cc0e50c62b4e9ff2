/** A head nearer than this to a face is felt, and its flash is not for open eyes (common practice, no source). */
export const NEAR_FACE_METRES = 0.7
