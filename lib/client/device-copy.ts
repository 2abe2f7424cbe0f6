/**
 * Says honestly whether this device has a copy of the words, and keeps a failing copy from silencing the page.
 * y-indexeddb tells nobody when a change is written; and its listener throws when the browser has taken its database
 * away (site data cleared, signed out in another tab), which keeps every later listener from hearing of the change: the
 * socket would send nothing and the page would call it saved.
 */
import type { IndexeddbPersistence } from "y-indexeddb";
import type * as Y from "yjs";

/** `keeping`: some words are on their way into the copy. `lost`: the browser gives the page no copy any more. */
export type CopyState = "keeping" | "kept" | "lost";

export const COPY_WORDS: Readonly<Record<CopyState, string>> = {
  keeping: "being written to this device",
  kept: "kept on this device",
  lost: "not kept on this device: leave this page open",
};

export interface DeviceCopy {
  readonly state: CopyState;
}

/** The store that y-indexeddb keeps updates in. */
const UPDATES = "updates";

/** Call right after making the store. `onChange` is told of every change of state, never from inside an update. */
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
      else return; // what comes before the copy is open is written as it opens
      waiting++;
    } catch {
      lose();
    }
  };
  doc.off("update", write);
  doc.on("update", guarded);
  // `destroy` takes the listener off by this name.
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

/** Transactions on one store end in the order they were made: when this one has, all before it are written. */
function whenWritten(db: IDBDatabase, done: () => void, failed: () => void): void {
  const after = db.transaction(UPDATES, "readonly");
  after.objectStore(UPDATES).getKey(0);
  after.oncomplete = done;
  after.onabort = failed;
}
