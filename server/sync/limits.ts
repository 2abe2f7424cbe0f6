/** Every limit of a socket or a room: bytes, milliseconds, counts. Our own choices unless a source is named. */
const KiB = 1024;
const MiB = 1024 * KiB;

export const LIMITS = {
  /** One message of a page. A larger one is refused with a reason. */
  messageBytes: MiB,
  /** Above this the socket layer itself gives up (close code 1009), so that a frame cannot fill the memory. */
  frameBytes: 8 * MiB,
  /** Before it is known who is asking. Counted on the raw socket, so that half a frame counts as well. */
  strangerBytes: 64 * KiB,
  strangerMessages: 32,
  strangerMs: 5000,
  /** Sockets whose holder is not known yet, in all. */
  strangers: 200,
  /** Sockets of one person, in all documents and on all devices. */
  socketsOfPerson: 60,
  /** The same of one network, where networks can be told apart. */
  strangersOfNetwork: 50,
  /** Time spent on everybody's frames in one turn of the event loop; at least one frame is handled. */
  turnMs: 25,
  /**
   * Time that one person's frames and costly requests may take at once, and the share of the thread's time from then on. Pasting
   * a whole class, a long day offline, or five thousand characters in one go take a third of a second.
   */
  personBurstMs: 2000,
  personPercent: 20,
  /** A page with this much unsent data is disconnected. */
  bufferedBytes: 8 * MiB,
  /** One presence state, and how many of them one connection may hold. */
  presenceBytes: 16 * KiB,
  presenceIds: 8,
  /** Updates that came before a page's first full sync and cannot be applied without it. */
  earlyBytes: 4 * MiB,
  /** Updates of one page that are merged within a turn; when there is more, they are applied at once. */
  heardBytes: 64 * KiB,
  /** Forbidden messages within this time before a page is disconnected. Stock pages send a few. */
  refusals: 20,
  refusalsMs: 60_000,
  /** Refusals are logged once in this time. */
  refusalLogMs: 60_000,
  /** How long a socket may take to close. */
  closeMs: 1000,
  pingMs: 30_000,
  /** y-websocket gives up on a server that sends no message for 30 s; pings do not count. */
  murmurMs: 10_000,
  /** How often the rights of every open socket are checked again. */
  accessSweepMs: 500,
  /** An empty room is kept this long, so that a page that reloads finds it open. */
  idleMs: 10_000,
  /** Follow-up work waits for a pause in the writing; without a pause it runs this often. */
  burstQuietMs: 150,
  burstLongestMs: 2000,
  /** At least this long between two syncs of the log, so that with many writers their answers share one. */
  syncEveryMs: 25,
  retryFirstMs: 100,
  retryLongestMs: 5000,
  /** Rows since the last snapshot before a new one is made: in a quiet room, and in a busy one. */
  compactRows: 200,
  compactRowsBusy: 5000,
  compactQuietMs: 2000,
  /** A document of more pieces is compacted on a thread of its own: a full one takes most of a second. */
  foldHerePieces: 5000,
  /** So is one with more rows to fold: 5,000 of them held everybody up for a tenth of a second. */
  foldHereRows: 500,
  /** After a failure, compaction is retried after this long. */
  foldAgainMs: 60_000,
  stopMs: 10_000,
} as const;

export type Limits = { readonly [K in keyof typeof LIMITS]: number };
