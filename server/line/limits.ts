/** Every limit of the line of screens: bytes, milliseconds, counts. Our own choices. */
const KiB = 1024;

export const LINE_LIMITS = {
  /** One message. A class of three hundred events, forty of which re-time everything, takes 150 KiB. */
  messageBytes: 512 * KiB,
  /** Before the device is known. The first message has to be its hello. */
  strangerBytes: 16 * KiB,
  strangerMs: 5000,
  strangers: 100,
  /** Screens on one line. */
  screens: 40,
  /** What one screen may send: at once, and per second from then on. */
  burstMessages: 60,
  messagesPerSecond: 20,
  burstBytes: 1024 * KiB,
  bytesPerSecond: 128 * KiB,
  /** A screen with this much unsent data is disconnected. */
  bufferedBytes: 4 * 1024 * KiB,
  /** How often a screen is told that the line is there. Screens notice a dead line by it, and ask for the time again. */
  hereMs: 1500,
  /** A screen that is silent for this many beats is lost. Beats are counted, so that a server that was paused loses nobody. */
  lostBeats: 4,
  /** How often every device is checked again, and outdated state is dropped (INV-09). */
  sweepMs: 500,
  closeMs: 1000,
  /** Refusals are logged once in this time. */
  refusalLogMs: 60_000,
} as const;

export type LineLimits = { readonly [K in keyof typeof LINE_LIMITS]: number };
