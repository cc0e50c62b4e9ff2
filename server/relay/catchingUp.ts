import type { Connection } from './connection.ts'
import { answerFrame, askFrame } from './frames.ts'
import type { SharedDocument } from './sharedDocument.ts'
import type { Change } from './work.ts'

/** Whether somebody's changes would be taken right now. */
type MayWrite = (connection: Connection) => boolean

/** Gives one who asked all that is missing there, and asks in turn for what is missing here. */
export function answer(document: SharedDocument, connection: Connection, stateVector: Uint8Array, mayWrite: MayWrite): void {
  let missing
  try {
    missing = document.missingFrom(stateVector)
  } catch {
    return connection.close('badFrame')
  }
  if (document.isBuilt) {
    connection.answer(answerFrame(missing))
    return askForMissing(document, [connection], mayWrite)
  }
  // To ask builds the document, and while that goes on nothing more of a long answer would leave.
  connection.answer(answerFrame(missing), () => {
    if (connection.isOpen) askForMissing(document, [connection], mayWrite)
  })
}

/** Asks those whose changes would be taken for what is missing here. */
export function askForMissing(document: SharedDocument, connections: Iterable<Connection>, mayWrite: MayWrite): void {
  const frame = askFrame(document.stateVector())
  for (const each of connections) if (mayWrite(each)) each.send(frame)
}

/**
 * Asks for what a change rests on. What arrives until the answer is in it too; only an answer that is not whole itself
 * is beyond help, and said to be.
 */
export function noteCompleteness(
  document: SharedDocument, { connection, isAnswer }: Change, isIncomplete: boolean, mayWrite: MayWrite,
): void {
  if (isIncomplete && isAnswer) connection.refuse('incomplete')
  if (isIncomplete && !isAnswer && !connection.isAskedForMissing) askForMissing(document, [connection], mayWrite)
  connection.isAskedForMissing = isIncomplete && !isAnswer
}
