/**
 * Whether this device has a copy of the words; also keeps a failing copy from silencing the page.
 * y-indexeddb reports no finished writes. Its listener throws once the browser has removed its database (site data
 * cleared, signed out in another tab), and then no later listener hears of the change: the socket would send nothing
 * and the page would call it saved.
 */
import type { IndexeddbPersistence } from "y-indexeddb";
import type * as Y from "yjs";

/**
 * `keeping`: some words are still being written to the copy. `lost`: the browser no longer keeps a copy for this page.
 */
export type CopyState = "keeping" | "kept" | "lost";

export const COPY_WORDS: Readonly<Record<CopyState, string>> = {
  keeping: "being copied to this device",
  kept: "kept on this device",
  lost: "not kept on this device, so leave this page open",
};

export interface DeviceCopy {
  readonly state: CopyState;
}

/** What y-indexeddb keeps updates in, and the small values of `copy-notes.ts`. */
const STORES = ["updates", "custom"];

/** Call right after making the store. `onChange` is called after each change of state, never from inside an update. */
export function watchDeviceCopy(store: IndexeddbPersistence, doc: Y.Doc, onChange: () => void): DeviceCopy {
  const write = store._storeUpdate;
  let waiting = 1;
  let lost = false;
  const settle = (): void => {
    waiting--;
    if (waiting === 0) onChange();
  };
  const lose = (): void => {
    if (lost) return;
    lost = true;
    queueMicrotask(onChange);
  };
  const guarded = (update: Uint8Array, origin: unknown): void => {
    if (lost || origin === store) return;
    try {
      write(update, origin);
      if (store.db) whenWritten(store.db, settle, lose);
      else return; // updates from before the copy is open are written as it opens
      waiting++;
    } catch {
      lose();
    }
  };
  doc.off("update", write);
  doc.on("update", guarded);
  // `destroy` removes the listener under this name.
  store._storeUpdate = guarded;
  store._db.catch(lose);
  store.once("synced", () => {
    if (store.db) whenWritten(store.db, settle, lose);
  });
  return {
    get state() {
      if (lost) return "lost";
      return waiting > 0 ? "keeping" : "kept";
    },
  };
}

/**
 * A transaction begins when all earlier ones that write to one of its stores have finished, so once this one is done the
 * updates and the notes beside them are written.
 */
function whenWritten(db: IDBDatabase, done: () => void, failed: () => void): void {
  const after = db.transaction(STORES, "readonly");
  for (const name of STORES) after.objectStore(name).getKey(0);
  after.oncomplete = done;
  after.onabort = failed;
}
