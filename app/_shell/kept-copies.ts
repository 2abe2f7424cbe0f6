/**
 * The copies of plans and months that this device keeps for working without a network. On signing out they are cleared,
 * but only once the server has everything in them. Client only.
 */
import { IndexeddbPersistence } from "y-indexeddb";
import * as Y from "yjs";
import { socketOrigin } from "#lib/client/doc-session/browser-edge.ts";
import { type CopyOf, parseCopyName } from "#lib/client/doc-session/copy-name.ts";
import { VERSIONS } from "#lib/client/doc-session/kinds.ts";
import { saveStateOf } from "#lib/client/doc-session/save-state.ts";
import { connectDoc } from "#lib/client/provider.ts";

interface Copy extends CopyOf {
  readonly database: string;
}

/** How long a copy may take to be saved before it counts as not saved, in ms. */
const PATIENCE_MS = 8000;

/** This person's copies on this device. A browser that cannot list them has none that could be cleared. */
export async function keptCopies(userId: string): Promise<Copy[]> {
  const all = (await indexedDB.databases?.().catch(() => [])) ?? [];
  return all.flatMap(({ name }) => {
    const of = parseCopyName(name ?? "");
    return name && of?.userId === userId ? [{ database: name, ...of }] : [];
  });
}

/** Offers one copy to the server; true when all of it is on the server's disk. */
export async function isSaved(copy: Copy): Promise<boolean> {
  const doc = new Y.Doc();
  const store = new IndexeddbPersistence(copy.database, doc);
  await store.whenSynced;
  const saved = await offered(copy, doc);
  await store.destroy();
  doc.destroy();
  return saved;
}

function offered(copy: Copy, doc: Y.Doc): Promise<boolean> {
  return new Promise((resolve) => {
    const done = (saved: boolean) => {
      clearTimeout(patience);
      // Not from inside the connection's own callback.
      queueMicrotask(() => link.stop());
      resolve(saved);
    };
    const patience = setTimeout(() => done(false), PATIENCE_MS);
    const link = connectDoc({
      origin: socketOrigin(),
      name: { kind: copy.kind, key: copy.key },
      doc,
      ...VERSIONS[copy.kind],
      generation: copy.generation,
      userId: copy.userId,
      onState: (state) => {
        const now = saveStateOf(state, { document: true, copy: true });
        if (now === "saved") done(true);
        else if (now === "ended") done(false);
      },
    });
  });
}

/** Removes the copies; resolves when the browser has removed them, or when another tab still holds one. */
export async function clearCopies(copies: readonly Copy[]): Promise<void> {
  await Promise.all(
    copies.map(
      ({ database }) =>
        new Promise<void>((resolve) => {
          const request = indexedDB.deleteDatabase(database);
          request.onsuccess = request.onerror = request.onblocked = () => resolve();
        }),
    ),
  );
}
