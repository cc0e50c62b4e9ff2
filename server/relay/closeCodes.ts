/**
 * Every code with which the relay ends a live connection. Stock y-websocket providers treat 4400 to 4499 as final and
 * come back after all others, so a cause that goes away by itself has a code outside that range.
 */
export const CLOSE_CODES = {
  stopping: { code: 1001, words: 'The relay is stopping. Come back in a moment.' },
  tooLarge: { code: 1009, words: 'The message is larger than MAX_MESSAGE_BYTES.' },
  badFrame: { code: 4400, words: 'That is not a message of this protocol.' },
  noSeat: { code: 4401, words: 'No such seat, or not yours. Open the link you were given again.' },
  foreignOrigin: { code: 4403, words: 'Pages of other sites may not come in here.' },
  noDocument: { code: 4404, words: 'There is no such document.' },
  withdrawn: { code: 4410, words: 'This link was withdrawn. Ask the photographer for a new one.' },
  expired: { code: 4411, words: 'This link has run out. Ask the photographer for a new one.' },
  roomFull: { code: 4503, words: 'As many people are looking as the relay allows. Try again later.' },
  unreadable: { code: 4504, words: 'The relay cannot read this job from its store.' },
  slowReader: { code: 4505, words: 'Too much was waiting to be read. Come back to catch up.' },
  tooFast: { code: 4506, words: 'Too many messages or bytes a second.' },
  fault: { code: 4510, words: 'The relay met a fault of its own. Nothing that others saw is lost. Come back.' },
} as const

export type CloseCause = keyof typeof CLOSE_CODES
