/** The structs of a document that the deletions of an update remove. */
import * as Y from "yjs";
import type { DecodedUpdate } from "#server/doc-log/updates.ts";

/** Live structs that the deletions touch, range by range; one that is touched in part is yielded whole. */
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
