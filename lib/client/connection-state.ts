/** What a page knows about its connection to one shared document. */
export interface ConnectionState {
  readonly connected: boolean;
  /** The first attempt has ended, one way or the other. */
  readonly tried: boolean;
  /** The server's document has been read on this connection, and this page's has been offered. */
  readonly synced: boolean;
  /** Messages sent on this connection that are not yet on the server's disk. */
  readonly waiting: number;
  /** The server reports that it cannot write just now. */
  readonly storageFailing: boolean;
  /** Its database is damaged: nothing is saved until that is restored. */
  readonly damaged: boolean;
  /**
   * The server takes nothing from this page until a colleague has sent words that the server has lost; this page keeps
   * trying.
   */
  readonly othersFirst: boolean;
  /** It said that it was stopping for a moment, and is not back yet. */
  readonly stopping: boolean;
  /** Code of a final close (a `CLOSE` code); null while the connection is open or being retried. */
  readonly closed: number | null;
}

/** Before anything has been heard. */
export const NOT_CONNECTED: ConnectionState = {
  connected: false,
  tried: false,
  synced: false,
  waiting: 0,
  storageFailing: false,
  damaged: false,
  othersFirst: false,
  stopping: false,
  closed: null,
};
