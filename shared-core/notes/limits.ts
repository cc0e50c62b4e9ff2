/** How much of each a job's notes may hold. Past these the relay refuses, in words; a document that claims more is cut. */
export const NOTES_LIMITS = {
  notes: 2_000,
  replies: 5_000,
  noteStates: 5_000,
  strokes: 2_000,
  pointsPerStroke: 400,
  ballots: 200,
  looksPerBallot: 6,
  thatOnes: 500,
  screenChecks: 1_000,
  locks: 200,
  yeses: 2_000,
  seen: 2_000,
  commandsPerBatch: 100,
  textCharacters: 2_000,
} as const
