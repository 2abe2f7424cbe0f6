/** The live documents of the process, as the rest of the program sees them: `springline().documents`. */
import type * as Y from "yjs";
import { CLOSE, type CloseName } from "#lib/protocol/close.ts";
import type { DocKind, DocName, News } from "#lib/protocol/messages.ts";

/** A document cannot be read or written at the moment. `reason` names the sentence in `CLOSE` that says why. */
export class DocUnavailable extends Error {
  readonly reason: CloseName;
  constructor(reason: CloseName, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = "DocUnavailable";
    this.reason = reason;
  }
}

export interface LiveDocuments {
  /**
   * Stores a new document: header, first update and author in one transaction, or in the caller's if there is one. Opens
   * no room. Throws when the document exists.
   */
  create(name: DocName, doc: Y.Doc, actorId: string): void;
  /**
   * Reads the document as it is on disk: the live copy when all of it is stored, otherwise a copy loaded from disk. `fn`
   * may only read, must not keep `doc` and must not return a promise. Synchronous. Throws DocUnavailable.
   */
  withDoc<T>(name: DocName, fn: (doc: Y.Doc) => T): T;
  /**
   * A write by the server: `fn` changes a private copy, the change is committed in the name of `actorId`, and only then
   * applied to the live document and sent to everybody. When `fn` throws or the disk fails, nothing has changed.
   * Synchronous. Not allowed inside a database transaction, which could still be rolled back. Throws DocUnavailable.
   */
  transact<T>(name: DocName, actorId: string, fn: (doc: Y.Doc) => T): T;
  /** Sends news to everybody who has the document open. */
  announce(name: DocName, news: News): void;
  /** The same for news that depend on who receives them; `newsFor` is called once per person. */
  announceEach(name: DocName, newsFor: (userId: string) => News): void;
  /** The documents of one kind that somebody has open or had open a moment ago. */
  opened(kind: DocKind): readonly DocName[];
  /** The id of the document's history; a page with another history is refused. Undefined when there is no document. */
  generation(name: DocName): string | undefined;
  /**
   * Runs work that a person asked for, at once or when their turn comes: beside what their sockets send it has one share of
   * the thread's time (`personPercent`). Rejects with what `work` throws.
   */
  inTurn<T>(userId: string, work: () => T | Promise<T>): Promise<T>;
  /** Checks the rights of every open socket again, at once. Call after any change of roles, sessions or sharing. */
  refreshAccess(): void;
  /** Closes a document that has just been deleted for good, without saving: its pages are told that there is none. */
  drop(name: DocName): void;
  /** Saves what is unsaved, closes every socket and frees everything. Waits for a failing disk up to `limitMs`. */
  stop(limitMs?: number): Promise<StopReport>;
  /** For health checks: cheap, and nothing secret. */
  health(): DocumentsHealth;
}

interface StopReport {
  /** Names (`plan/x`) of documents whose last changes could not be saved. */
  readonly unsaved: readonly string[];
}

interface DocumentsHealth {
  readonly rooms: number;
  readonly connections: number;
  /** Documents whose changes are waiting for a failing disk. */
  readonly failing: readonly string[];
  /** Forbidden messages refused since the start. */
  readonly refused: number;
}

export const planDoc = (id: string): DocName => ({ kind: "plan", key: id });
export const monthDoc = (month: string): DocName => ({ kind: "month", key: month });

/**
 * The reason, when the error is a DocUnavailable. Recognised by its name: the route handlers' bundle holds another copy of
 * the class than the server that throws it.
 */
export function unavailableReason(error: unknown): CloseName | undefined {
  if (!(error instanceof Error) || error.name !== "DocUnavailable" || !("reason" in error)) return undefined;
  const { reason } = error;
  return Object.keys(CLOSE).find((name): name is CloseName => name === reason);
}
