/**
 * What the sync server needs from the program around it. It knows nothing of accounts, plans or rules. Who is asking, what
 * they may do and what a document means all come through `SyncHost`, so that it can run and be tested alone.
 */
import type * as Y from "yjs";
import type { Bounds } from "#lib/doc/bounds.ts";
import type { Migration } from "#lib/doc/migrate.ts";
import type { ProtectionOf } from "#lib/doc/protected-parts.ts";
import type { DocKind, DocName, News } from "#lib/protocol/messages.ts";

/** Who holds a socket. Never changes: another session needs another socket. */
export interface SessionInfo {
  readonly sessionId: string;
  readonly userId: string;
  readonly name: string;
}

/** What a session may do with one document right now. `writes` and `comments` are independent. */
export interface DocAccess {
  readonly exists: boolean;
  readonly reads: boolean;
  readonly writes: boolean;
  readonly comments: boolean;
}

/** What one kind of document means to the program. */
export interface KindHooks {
  /** The document version that this program writes; a page of another version is told to reload. */
  readonly currentVersion: number;
  /** The editor's node-type version, where the kind has an editor. */
  readonly editorVersion?: number;
  /** Migrates a loaded document, or reports that it is newer. The changes are stored before anybody sees them. */
  migrate(doc: Y.Doc): Migration;
  /** Which parts of the document no page may erase or replace. */
  holds(doc: Y.Doc): ProtectionOf;
  /**
   * Watches an open document for content in the format of an older version, which arrives late from a device's own copy.
   * The returned function is called after each update of a page and migrates it; the change is stored and sent in the
   * program's name. It must not throw.
   */
  carryLate?(doc: Y.Doc): () => void;
  /** How large a page may let the document grow. */
  readonly bounds: Bounds;
  /** Creates a document that is opened for the first time; null when no document can have that key. */
  create?(key: string): Y.Doc | null;
  /** Called inside the transaction that stores a person's first change since the document was opened; `at` in ms. */
  wrote?(key: string, userId: string, at: number): void;
  /** After each burst of edits, with the live document, all of it on disk. May only read. What it throws is logged. */
  afterChange?(name: DocName, doc: Y.Doc): void;
}

/** The hooks for one kind, and what a page of that kind is told on joining. */
export interface DocKindHooks extends KindHooks {
  welcome(name: DocName, userId: string): News[];
}

export interface SyncHost {
  /** The session behind the headers (cookies) of an upgrade request, or null. */
  authenticate(headers: Headers): Promise<SessionInfo | null>;
  /**
   * What sessions may do with one document, as the database has it now. Asked at a join, after `refreshAccess()` and twice
   * a second for everybody in the room. The returned function gives null for a session that has ended or expired, and is
   * only valid during this turn of the event loop. Synchronous and cheap; must not throw.
   */
  accessTo(name: DocName): (session: SessionInfo) => DocAccess | null;
  readonly kinds: Readonly<Record<DocKind, KindHooks>>;
  /** What a page is told on joining: state, threads, findings. */
  welcome?(name: DocName, session: SessionInfo): readonly News[];
}
