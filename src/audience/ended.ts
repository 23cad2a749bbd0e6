/** Why the server ended a connection, as a close code. */
export const ENDED = {
  /** No message of ours, or too many. */
  refused: 1008,
  /** The server met a fault of its own: the caller may call again. */
  fault: 1011,
  wrongKey: 4003,
  noRoom: 4004,
  full: 4009,
  over: 4010,
} as const;
export type Ending = (typeof ENDED)[keyof typeof ENDED];
