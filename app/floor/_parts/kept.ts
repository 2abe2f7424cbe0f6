/**
 * What the device keeps: its pairing, its cards, the class that runs, in IndexedDB by name. The token is kept here and sent
 * in the header of a request; it is never in an address.
 */

import type { CardEnvelope } from "#lib/card/schema.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { DroppedCard, KeptCard, WithdrawnCard } from "#lib/floor/keep-cards.ts";
import type { KeptRehearsal } from "#lib/floor/kept-rehearsal.ts";
import type { ClockAnchor, FloorEvent } from "#lib/floor/log.ts";
import type { FloorSettings } from "#lib/floor/settings.ts";
import type { Formats } from "#lib/formats/formats.ts";

export interface Pairing {
  readonly token: string;
  readonly device: { readonly id: string; readonly name: string };
  readonly room: { readonly id: string; readonly name: string };
  readonly studio: { readonly name: string; readonly town: string };
  readonly publicKey: string;
}
export interface Shelf {
  readonly cards: readonly KeptCard[];
  /** By plan id: `2026-05-04T18:00`, the studio's wall clock. */
  readonly nextSlots: Readonly<Record<string, string>>;
  /** What changed of that class since its month was signed off. A shelf kept by an older page has none. */
  readonly slotMarks?: Readonly<Record<string, readonly string[]>>;
  /** Withdrawn editions whose cards were deleted. A shelf kept by an older page has none. */
  readonly dropped?: readonly DroppedCard[];
  /** Editions that must not be started any more. A shelf kept by an older page has none. */
  readonly withdrawn?: readonly WithdrawnCard[];
  /** The studio's. A shelf kept by an older page has none. */
  readonly formats?: Formats | undefined;
  /** ms since the epoch; when the studio last answered. */
  readonly refreshedAt: number;
}
/** The class in progress: after a reload the page goes on with it. */
export interface KeptClass {
  /** The card it runs from, whichever cards arrive meanwhile. */
  readonly envelope: CardEnvelope;
  readonly log: readonly FloorEvent[];
  readonly anchor: ClockAnchor;
  /** Names the class for the studio. Missing in classes begun by an older page. */
  readonly sessionId?: string;
}
/** The rehearsal in progress, likewise. */
export interface KeptCardRehearsal {
  readonly envelope: CardEnvelope;
  readonly kept: KeptRehearsal;
}
interface Kept {
  pairing: Pairing;
  shelf: Shelf;
  running: KeptClass;
  rehearsing: KeptCardRehearsal;
  settings: FloorSettings;
}

const DATABASE = "springline-floor";
const STORE = "kept";
/** Class logs that the studio does not have yet, by session id. */
const LOGS = "logs";

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 2);
    request.onupgradeneeded = () => {
      const { result } = request;
      if (!result.objectStoreNames.contains(STORE)) result.createObjectStore(STORE);
      if (!result.objectStoreNames.contains(LOGS)) result.createObjectStore(LOGS);
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("the device's storage did not open"));
  });
}

async function run<T>(
  mode: IDBTransactionMode,
  act: (store: IDBObjectStore) => IDBRequest<T>,
  name = STORE,
): Promise<T> {
  const database = await open();
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = database.transaction(name, mode);
      const request = act(transaction.objectStore(name));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = transaction.onabort = () =>
        reject(transaction.error ?? new Error("the device's storage refused"));
    });
  } finally {
    database.close();
  }
}

/** Undefined when nothing is kept under that name. Only `keep` writes here, so the shape is known. */
export const kept = <K extends keyof Kept>(name: K): Promise<Kept[K] | undefined> =>
  run<Kept[K] | undefined>("readonly", (store) => store.get(name));

/** Resolves when it is on disk. */
export async function keep<K extends keyof Kept>(name: K, value: Kept[K]): Promise<void> {
  await run("readwrite", (store) => store.put(value, name));
}

export async function letGo(name: keyof Kept): Promise<void> {
  await run("readwrite", (store) => store.delete(name));
}

/** Resolves when the log is on disk. A second log of one session replaces the first. */
export async function keepLog(log: ClassLog): Promise<void> {
  await run("readwrite", (store) => store.put(log, log.sessionId), LOGS);
}

export const keptLogs = (): Promise<ClassLog[]> => run<ClassLog[]>("readonly", (store) => store.getAll(), LOGS);

export async function letGoLog(sessionId: string): Promise<void> {
  await run("readwrite", (store) => store.delete(sessionId), LOGS);
}
