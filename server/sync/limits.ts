/** Every number that bounds a socket or a room. Bytes, milliseconds, counts. Our own choices unless a source is named. */
const KiB = 1024;
const MiB = 1024 * KiB;

export const LIMITS = {
  /** One message of a page. Above it the page is told in words; nothing of it is taken. */
  messageBytes: MiB,
  /** Where the socket layer itself gives up (close code 1009), so that a frame never fills the memory. */
  frameBytes: 8 * MiB,
  /** Before the server knows who is asking. Counted on the raw socket, so that half a frame counts as well. */
  strangerBytes: 64 * KiB,
  strangerMessages: 32,
  strangerMs: 5000,
  /** Sockets whose person is not yet known, all together. */
  strangers: 200,
  /** Sockets of one person, in all documents and on all devices. */
  socketsOfPerson: 60,
  /** Sockets of one network whose person is not yet known, where networks can be told apart. */
  strangersOfNetwork: 50,
  /** Work on frames in one turn of the event loop, of everybody together; at least one frame. */
  turnMs: 25,
  /**
   * What one person's frames may cost at once, and from then on: of the thread's own time. A class pasted whole, a long
   * day offline, five thousand letters in one go are a third of a second.
   */
  personBurstMs: 2000,
  personPercent: 20,
  /** A reader that has this much waiting is cut off. */
  bufferedBytes: 8 * MiB,
  /** One presence state, and how many of them one connection may hold. */
  presenceBytes: 16 * KiB,
  presenceIds: 8,
  /** Updates that came before a page's first full offer and cannot be read without it. */
  earlyBytes: 4 * MiB,
  /** What is put together of what one page says in a turn; beyond it is taken in at once. */
  heardBytes: 64 * KiB,
  /** What a page may try that is not its to do before it is let go: so many within so long. Stock pages show themselves unasked. */
  refusals: 20,
  refusalsMs: 60_000,
  /** Refusals are told in the log once in this time. */
  refusalLogMs: 60_000,
  /** How long a socket may take to say goodbye. */
  closeMs: 1000,
  pingMs: 30_000,
  /** y-websocket gives up on a server it has not heard a message from for 30 s; pings do not count for it. */
  murmurMs: 10_000,
  /** How often the host is asked again about every open socket. */
  accessSweepMs: 500,
  /** An empty room is kept this long: a page that reloads finds it. */
  idleMs: 10_000,
  /** What follows a change waits for a pause in the writing; and while there is none, it comes this often. */
  burstQuietMs: 150,
  burstLongestMs: 2000,
  retryFirstMs: 100,
  retryLongestMs: 5000,
  /** Rows since the last snapshot that make one worth while, when the room has been quiet; and when it has not. */
  compactRows: 200,
  compactRowsBusy: 5000,
  compactQuietMs: 2000,
  /** A document of more pieces is folded on a thread of its own: a full one takes the better part of a second. */
  foldHerePieces: 5000,
  /** A log that could not be folded is tried again after this long. */
  foldAgainMs: 60_000,
  stopMs: 10_000,
} as const;

export type Limits = { readonly [K in keyof typeof LIMITS]: number };
