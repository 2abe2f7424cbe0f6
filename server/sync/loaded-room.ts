/** What a room is made of: a document read from disk, and what its kind says about it. */
import type * as Y from "yjs";
import type { Bounds } from "#lib/doc/bounds.ts";
import type { ProtectionOf } from "#lib/doc/protected-parts.ts";
import type { KindHooks } from "./host.ts";
import type { Owners } from "./owners.ts";

export interface LoadedRoom {
  readonly doc: Y.Doc;
  readonly generation: string;
  /** Rows on disk since the newest snapshot. */
  readonly rows: number;
  /** What of the document only ever grows. */
  readonly holds: (doc: Y.Doc) => ProtectionOf;
  readonly carryLate?: KindHooks["carryLate"];
  /** How large it may grow. */
  readonly bounds: Bounds;
  /** Whose page each client id is. */
  readonly owners: Owners;
}
