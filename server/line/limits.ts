/** Every number that bounds the line of screens. Bytes, milliseconds, counts: our own choices. */
const KiB = 1024;

export const LINE_LIMITS = {
  /** One message. A class of three hundred events, forty of them re-timings of everything, has 150 KiB. */
  messageBytes: 512 * KiB,
  /** Before the device is known. Its first message is its hello. */
  strangerBytes: 16 * KiB,
  strangerMs: 5000,
  strangers: 100,
  /** On one line. */
  screens: 40,
  /** What one screen may send: so much at once, and so much more a second. */
  burstMessages: 60,
  messagesPerSecond: 20,
  burstBytes: 1024 * KiB,
  bytesPerSecond: 128 * KiB,
  /** A screen that has this much waiting is cut off. */
  bufferedBytes: 4 * 1024 * KiB,
  /** How often a screen is told that the line is there; by it the screen asks for the time again. Silence is seen by it. */
  hereMs: 1500,
  /** A screen that was not heard of for so many of these beats is lost. Counted, so that a server that stood still loses nobody. */
  lostBeats: 4,
  /** How often every device is asked for again, and what has become old is forgotten (INV-09). */
  sweepMs: 500,
  closeMs: 1000,
  /** What is turned away is written to the log once in this time. */
  refusalLogMs: 60_000,
} as const;

export type LineLimits = { readonly [K in keyof typeof LINE_LIMITS]: number };
