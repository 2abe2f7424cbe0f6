/**
 * A page's yjs client id when another page turns out to have the same one, by a chance of one in four thousand million:
 * whatever both wrote under it would be taken for one and the same.
 */
import * as Y from "yjs";

/** A client id that nothing in the document stands under. */
export function freshClientId(doc: Y.Doc): number {
  for (;;) {
    const other = new Y.Doc();
    const { clientID } = other;
    other.destroy();
    if (clientID !== doc.clientID && !doc.store.clients.has(clientID)) return clientID;
  }
}

/**
 * Puts all words under the document's own client id under `fresh`, in place, so that editors and fields go on; no update
 * tells of it. Only for words that nobody else has seen. False when there were none. Steps of undo that name them are void.
 */
export function renameOwnWords(doc: Y.Doc, fresh: number): boolean {
  const old = doc.clientID;
  doc.clientID = fresh;
  const structs = doc.store.clients.get(old);
  if (!structs) return false;
  const rename = (id: Y.ID | null) => {
    if (id?.client === old) id.client = fresh;
  };
  // Ids are shared between neighbours: each is renamed once, whoever comes to it first.
  for (const struct of structs) {
    rename(struct.id);
    if (!(struct instanceof Y.Item)) continue;
    rename(struct.origin);
    rename(struct.rightOrigin);
    rename(struct.redone);
  }
  doc.store.clients.delete(old);
  doc.store.clients.set(fresh, structs);
  return true;
}
