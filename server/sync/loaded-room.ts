/** What a room is made from: a document read from disk, and the hooks of its kind. */
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
  /** Which parts no page may erase or replace. */
  readonly holds: (doc: Y.Doc) => ProtectionOf;
  readonly carryLate?: KindHooks["carryLate"];
  /** How large it may grow. */
  readonly bounds: Bounds;
  /** The person whose page each client id is. */
  readonly owners: Owners;
}
