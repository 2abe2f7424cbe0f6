/** The live documents of the process, as the rest of the program sees them: `springline().rooms`. */
import type * as Y from "yjs";
import { CLOSE, type CloseName } from "#lib/protocol/close.ts";
import type { DocKind, DocName, News } from "#lib/protocol/messages.ts";

/** Why a document cannot be read or written just now. `reason` names a sentence of `CLOSE` fit to be shown. */
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
   * Stores a new document: header, first update and author in one transaction, which joins the caller's transaction
   * when there is one. Opens no room. Throws when a document of that name exists.
   */
  create(name: DocName, doc: Y.Doc, actorId: string): void;
  /**
   * Reads the document as it is on disk: the live copy when all of it is stored, else a copy loaded from disk. `fn`
   * must only read, must not keep `doc` and must not return a promise. Synchronous. Throws DocUnavailable.
   */
  withDoc<T>(name: DocName, fn: (doc: Y.Doc) => T): T;
  /**
   * A write by the server: `fn` changes a private copy, the change is committed in `actorId`'s name, and only then
   * applied to the live document and sent to everybody. When `fn` throws or the disk fails, nothing has happened.
   * Synchronous; refuses to run inside a database transaction (which could still be rolled back). Throws DocUnavailable.
   */
  transact<T>(name: DocName, actorId: string, fn: (doc: Y.Doc) => T): T;
  /** Sends news to everybody in the document's room. Nothing happens when nobody is there. */
  announce(name: DocName, news: News): void;
  /** The same where what may be said depends on who hears it: asked once a person. */
  announceEach(name: DocName, newsFor: (userId: string) => News): void;
  /** The documents of one kind that somebody has open, or had a moment ago. */
  opened(kind: DocKind): readonly DocName[];
  /** Names the history of a document. A page that holds another one is refused. Undefined when there is no document. */
  generation(name: DocName): string | undefined;
  /** Asks the host again about every open socket, at once. Call after any change of roles, sessions or sharing. */
  refreshAccess(): void;
  /** Saves what is unsaved, closes every socket, frees everything. Waits for a failing disk up to `limitMs`. */
  stop(limitMs?: number): Promise<StopReport>;
  /** For health checks: nothing secret, cheap. */
  health(): DocumentsHealth;
}

export interface StopReport {
  /** Names (`plan/x`) of documents whose last changes could not be saved. */
  readonly unsaved: readonly string[];
}

export interface DocumentsHealth {
  readonly rooms: number;
  readonly connections: number;
  /** Names of documents whose changes wait for a failing disk. */
  readonly failing: readonly string[];
  /** Forbidden messages turned away since the start. */
  readonly refused: number;
}

export const planDoc = (id: string): DocName => ({ kind: "plan", key: id });
export const monthDoc = (month: string): DocName => ({ kind: "month", key: month });

/** By name, not by class: a route's bundle holds another copy of the class than the server that throws it. */
export function unavailableReason(error: unknown): CloseName | undefined {
  if (!(error instanceof Error) || error.name !== "DocUnavailable" || !("reason" in error)) return undefined;
  const { reason } = error;
  return Object.keys(CLOSE).find((name): name is CloseName => name === reason);
}
