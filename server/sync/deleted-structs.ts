/** What of a document an update's deletions name. */
import * as Y from "yjs";
import type { DecodedUpdate } from "#server/doc-log/updates.ts";

/** Living structs that the deletions touch, each range in its order; a struct touched in part is given whole. */
export function* deletedStructs(doc: Y.Doc, { clients }: DecodedUpdate["ds"]): Generator<Y.Item | Y.GC> {
  for (const [client, ranges] of clients) {
    const structs = doc.store.clients.get(client) ?? [];
    const known = Y.getState(doc.store, client);
    for (const { clock, len } of ranges) {
      if (clock >= known) continue;
      for (let i = Y.findIndexSS(structs, clock); i < structs.length; i++) {
        const struct = structs[i];
        if (!struct || struct.id.clock >= clock + len) break;
        if (!struct.deleted) yield struct;
      }
    }
  }
}
