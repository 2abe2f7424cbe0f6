/**
 * What the sync server needs from the program around it. It knows nothing of accounts, plans or rules: who asks, what
 * they may do and what a document means all come through `SyncHost`, so that it can be run and tested alone.
 */
import type * as Y from "yjs";
import type { Bounds } from "#lib/doc/bounds.ts";
import type { Migration } from "#lib/doc/migrate.ts";
import type { ProtectionOf } from "#lib/doc/protected-parts.ts";
import type { DocKind, DocName, News } from "#lib/protocol/messages.ts";

/** Who holds a socket. Fixed for the socket's life: another session needs another socket. */
export interface SessionInfo {
  readonly sessionId: string;
  readonly userId: string;
  readonly name: string;
}

/** What a session may do with one document right now. `writes` and `comments` imply nothing about each other. */
export interface DocAccess {
  readonly exists: boolean;
  readonly reads: boolean;
  readonly writes: boolean;
  readonly comments: boolean;
}

/** What one kind of document means to the program. */
export interface KindHooks {
  /** The document version this program writes; a page that speaks another is told to reload. */
  readonly currentVersion: number;
  /** The editor's node-type version, where the kind has an editor. */
  readonly editorVersion?: number;
  /** Carries a loaded document forward (or says that it is newer). What it changes is stored before anybody sees it. */
  migrate(doc: Y.Doc): Migration;
  /** What of the document only ever grows, whatever a page sends. */
  holds(doc: Y.Doc): ProtectionOf;
  /**
   * Watches an open document for what a device copy of an older version still says in the old way. The answer, called
   * after each update of a page, carries it forward and must not throw; it is stored and sent on in the program's name.
   */
  carryLate?(doc: Y.Doc): () => void;
  /** How large a page may let the document grow. */
  readonly bounds: Bounds;
  /** Makes a document that is opened for the first time; null when there can be none of that key. */
  create?(key: string): Y.Doc | null;
  /** Somebody wrote, for the first time since the document was opened; `at` ms. Inside the transaction that stores it. */
  wrote?(key: string, userId: string, at: number): void;
  /** After each burst of edits, with the live document, all of it on disk. Must only read. May throw: it is logged. */
  afterChange?(name: DocName, doc: Y.Doc): void;
}

export interface SyncHost {
  /** The session behind the upgrade request's headers (cookies), or null. */
  authenticate(headers: Headers): Promise<SessionInfo | null>;
  /**
   * What sessions may do with one document as the database has it now: at a join, after `refreshAccess()` and twice a second
   * for everybody in its room. What it answers is null when the session has ended or expired. For this turn of the event loop
   * only. Synchronous and cheap; must not throw.
   */
  accessTo(name: DocName): (session: SessionInfo) => DocAccess | null;
  readonly kinds: Readonly<Record<DocKind, KindHooks>>;
  /** What a page hears on joining: state, threads, findings. */
  welcome?(name: DocName, session: SessionInfo): readonly News[];
}

/** The part of pino's logger the sync server uses. */
export interface SyncLog {
  info(details: object, message: string): void;
  warn(details: object, message: string): void;
  error(details: object, message: string): void;
}
