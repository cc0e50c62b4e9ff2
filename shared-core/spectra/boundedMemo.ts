/**
 * Remembers the last answers of a costly pure function under a text key. Bounded, because a document under edit asks
 * for ever new colours; the oldest answer goes first.
 */
export function boundedMemo<Question, Answer>(
  limit: number,
  keyOf: (question: Question) => string,
  solve: (question: Question) => Answer,
): (question: Question) => Answer {
  const answers = new Map<string, Answer>()
  return (question) => {
    const key = keyOf(question)
    const known = answers.get(key)
    if (known !== undefined) return known
    const answer = solve(question)
    if (answers.size >= limit) answers.delete(answers.keys().next().value as string)
    answers.set(key, answer)
    return answer
  }
}
