/**
 * The browser as a session sees it: databases, frames, network events. Nothing else in lib/client/doc-session touches
 * them.
 */
import { IndexeddbPersistence, storeState } from "y-indexeddb";
import type * as Y from "yjs";
import { explainAddress } from "../ask-address.ts";
import { copyNotes } from "../copy-notes.ts";
import { watchDeviceCopy } from "../device-copy.ts";
import { newerBuild } from "../newer-build.ts";
import type { Edge, KeptCopy, Unsubscribe } from "./edge.ts";

/** A hidden page gets no animation frames, so a timer stands in for them. */
const HIDDEN_FRAME_MS = 250;
/** Once the page is at rest, ms. */
const TIDY_AFTER_MS = 5000;
/** Updates that a copy may be kept in. Each opening adds one, of up to 200 kB. */
const MOST_WRITTEN = 8;

export const socketOrigin = (): string => location.origin.replace(/^http/, "ws");

export function browserEdge(): Edge {
  return {
    origin: socketOrigin(),
    openCopy,
    frame,
    now: () => performance.now(),
    later,
    onNetwork(heard) {
      return listen(window, ["online", "offline"], heard);
    },
    onShown(heard) {
      return listen(document, ["visibilitychange"], () => {
        if (document.visibilityState === "visible") heard();
      });
    },
    askAddress: explainAddress,
    heardBuild: (build) => newerBuild.heard(build),
    reload: () => location.reload(),
  };
}

function openCopy(name: string, doc: Y.Doc, onChange: () => void): KeptCopy {
  const store = new IndexeddbPersistence(name, doc);
  const copy = watchDeviceCopy(store, doc, onChange);
  const notes = copyNotes(store, onChange);
  store.on("synced", onChange);
  const tidying = setTimeout(() => void tidy(store), TIDY_AFTER_MS);
  return {
    get state() {
      return copy.state;
    },
    get isRead() {
      return (store.synced && notes.isRead) || copy.state === "lost";
    },
    notes: notes.all,
    keepNote: notes.keep,
    rewrite: () => void storeState(store, true),
    clear: () => store.clearData(),
    close: () => {
      clearTimeout(tidying);
      void store.destroy();
    },
  };
}

/** Every opening writes the document as it began, and the next one reads all that was written: it is made one again. */
async function tidy(store: IndexeddbPersistence): Promise<void> {
  if (!store.synced || store._dbsize <= MOST_WRITTEN) return;
  // A copy that the browser has removed is reported by `watchDeviceCopy`.
  await storeState(store, true).catch(() => undefined);
}

function frame(run: () => void): Unsubscribe {
  const stop = () => {
    cancelAnimationFrame(drawn);
    clearTimeout(hidden);
  };
  const once = () => {
    stop();
    run();
  };
  const drawn = requestAnimationFrame(once);
  const hidden = setTimeout(once, HIDDEN_FRAME_MS);
  return stop;
}

function later(run: () => void, ms: number): Unsubscribe {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
}

function listen(target: EventTarget, events: readonly string[], heard: () => void): Unsubscribe {
  for (const event of events) target.addEventListener(event, heard);
  return () => {
    for (const event of events) target.removeEventListener(event, heard);
  };
}
