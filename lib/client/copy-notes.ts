/**
 * Small values beside a device's copy, in the store that y-indexeddb offers for them. They are a convenience: where the
 * browser has removed its database they are not kept, which the state of the copy already shows.
 */
import type { IndexeddbPersistence } from "y-indexeddb";

const CUSTOM = "custom";

export interface CopyNotes {
  /** The values that were there when the copy was opened. */
  readonly all: ReadonlyMap<string, unknown>;
  readonly isRead: boolean;
  /** Undefined removes the value. */
  keep(name: string, value: unknown): void;
}

/** `onRead` is called once, when all have been read or cannot be. */
export function copyNotes(store: IndexeddbPersistence, onRead: () => void): CopyNotes {
  const all = new Map<string, unknown>();
  let isRead = false;
  const done = () => {
    isRead = true;
    onRead();
  };
  store._db.then((db) => read(db, all)).then(done, done);
  return {
    all,
    get isRead() {
      return isRead;
    },
    keep(name, value) {
      // Written at once where possible: the page may be closing.
      if (store.db) put(store.db, name, value);
      else
        store._db.then(
          (db) => put(db, name, value),
          () => undefined,
        );
    },
  };
}

function read(db: IDBDatabase, into: Map<string, unknown>): Promise<void> {
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(CUSTOM, "readonly");
    const notes = transaction.objectStore(CUSTOM);
    const [names, values] = [notes.getAllKeys(), notes.getAll()];
    transaction.oncomplete = () => {
      names.result.forEach((name, i) => {
        if (typeof name === "string") into.set(name, values.result[i]);
      });
      resolve();
    };
    transaction.onabort = () => reject(transaction.error);
  });
}

function put(db: IDBDatabase, name: string, value: unknown): void {
  try {
    const notes = db.transaction(CUSTOM, "readwrite").objectStore(CUSTOM);
    if (value === undefined) notes.delete(name);
    else notes.put(value, name);
  } catch (error) {
    // The browser removed the database, or it is being closed.
    if (!(error instanceof DOMException)) throw error;
  }
}
