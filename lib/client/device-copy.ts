/**
 * Keeps a failing copy on the device from silencing the page. y-indexeddb's listener throws when the browser has taken
 * its database away (site data cleared, signed out in another tab), and a listener that throws keeps every later one
 * from hearing of the change: the socket would send nothing and the page would call it saved.
 */
import type { IndexeddbPersistence } from "y-indexeddb";
import type * as Y from "yjs";

/** Call right after making the store. `onLost` is told once, when the copy can no longer be written. */
export function guardDeviceCopy(store: IndexeddbPersistence, doc: Y.Doc, onLost: () => void): void {
  const write = store._storeUpdate;
  let lost = false;
  const guarded = (update: Uint8Array, origin: unknown): void => {
    if (lost) return;
    try {
      write(update, origin);
    } catch {
      lost = true;
      onLost();
    }
  };
  doc.off("update", write);
  doc.on("update", guarded);
  // `destroy` takes the listener off by this name.
  store._storeUpdate = guarded;
}
