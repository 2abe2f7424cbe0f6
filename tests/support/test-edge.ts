/** The machine a session runs on, in a test: a socket with a cookie, copies in memory, a network that says what it is told. */
import { WebSocket as NodeWebSocket } from "ws";
import * as Y from "yjs";
import type { Edge } from "#lib/client/doc-session/edge.ts";

export interface TestEdge extends Edge {
  /** The device says that its network changed. */
  tellNetwork(): void;
  /** The page is seen again. */
  show(): void;
  /** What this device keeps, by name. */
  readonly kept: Map<string, Uint8Array>;
  /** What it keeps beside its one copy. */
  readonly notes: Map<string, unknown>;
  /** Lets copies be read; until then none is. */
  readCopies(): void;
}

export interface TestEdgeOptions {
  readonly origin: string;
  readonly cookie: string;
  readonly kept?: Map<string, Uint8Array>;
  readonly notes?: Map<string, unknown>;
  /** Copies are read only when the test says so. */
  readonly slowCopies?: boolean;
  /** What the address says over HTTP when no socket opens; it does not answer when left out. */
  readonly askAddress?: () => Promise<string | null>;
}

export function testEdge(options: TestEdgeOptions): TestEdge {
  const { origin, cookie, kept = new Map(), notes = new Map(), slowCopies = false } = options;
  const { askAddress = async () => null } = options;
  const network = new Set<() => void>();
  const shown = new Set<() => void>();
  let read = () => {};
  const mayRead = new Promise<void>((resolve) => {
    read = resolve;
  });
  if (!slowCopies) read();
  const heardBy = (all: Set<() => void>) => (heard: () => void) => {
    all.add(heard);
    return () => all.delete(heard);
  };
  const later = (run: () => void, ms: number) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  };
  return {
    origin,
    kept,
    notes,
    WebSocket: class extends NodeWebSocket {
      constructor(url: string | URL, protocols?: string | string[]) {
        super(url, protocols, { headers: { cookie: `session=${cookie}` } });
      }
    } as unknown as typeof WebSocket,
    openCopy(name, doc, onChange) {
      let isRead = false;
      const keep = () => isRead && kept.set(name, Y.encodeStateAsUpdate(doc));
      void mayRead.then(() => {
        const before = kept.get(name);
        if (before) Y.applyUpdate(doc, before, "copy");
        isRead = true;
        onChange();
      });
      doc.on("update", keep);
      const before = new Map(structuredClone([...notes]));
      return {
        state: "kept",
        get isRead() {
          return isRead;
        },
        notes: before,
        keepNote(note, value) {
          if (value === undefined) notes.delete(note);
          else notes.set(note, structuredClone(value));
        },
        rewrite: keep,
        clear: async () => void kept.delete(name),
        close: () => doc.off("update", keep),
      };
    },
    frame: (run) => later(run, 5),
    later,
    onNetwork: heardBy(network),
    onShown: heardBy(shown),
    reload: () => undefined,
    askAddress,
    readCopies: () => read(),
    tellNetwork() {
      for (const heard of network) heard();
    },
    show() {
      for (const heard of shown) heard();
    },
  };
}
