/** What the rooms tell of their work, for whoever measures it. Told of every frame, so it has to be cheap; it must not throw. */
export interface SyncMeter {
  /** A frame of a page, in bytes. */
  received(bytes: number): void;
  sent(bytes: number): void;
  /** Document messages of pages that were taken. */
  took(messages: number): void;
  /** A row written to the log, in bytes. */
  stored(bytes: number): void;
  /** What a page sent in one turn was passed on, `ms` after the oldest of it had arrived. */
  relayed(ms: number): void;
  /** The same is on the disk. */
  saved(ms: number): void;
  /** Messages that were refused. `cause` is one of a few fixed texts. */
  refused(cause: string, count: number): void;
}

const nothing = () => undefined;

/** Measures nothing. */
export const NO_METER: SyncMeter = {
  received: nothing,
  sent: nothing,
  took: nothing,
  stored: nothing,
  relayed: nothing,
  saved: nothing,
  refused: nothing,
};
