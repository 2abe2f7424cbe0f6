/**
 * Gives a page a new yjs client id when another page turns out to have the same one (a chance of one in four thousand
 * million): yjs would take what both wrote under it for the same words.
 */
import * as Y from "yjs";

/** A client id that nothing in the document is written under. */
export function freshClientId(doc: Y.Doc): number {
  for (;;) {
    const other = new Y.Doc();
    const { clientID } = other;
    other.destroy();
    if (clientID !== doc.clientID && !doc.store.clients.has(clientID)) return clientID;
  }
}

/**
 * Moves everything written under the document's own client id to `fresh`, in place, so that editors and fields go on;
 * no update reports it. Only for words that nobody else has seen. False when there were none. Undo steps that refer to
 * them no longer work.
 */
export function renameOwnWords(doc: Y.Doc, fresh: number): boolean {
  const old = doc.clientID;
  doc.clientID = fresh;
  const structs = doc.store.clients.get(old);
  if (!structs) return false;
  const rename = (id: Y.ID | null) => {
    if (id?.client === old) id.client = fresh;
  };
  // Neighbours share id objects, so each object is renamed once.
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
