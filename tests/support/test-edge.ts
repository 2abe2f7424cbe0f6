/** The machine under a session, in a test: a socket with a cookie, copies in memory, a network that the test controls. */
import { WebSocket as NodeWebSocket } from "ws";
import * as Y from "yjs";
import type { Edge } from "#lib/client/doc-session/edge.ts";

export interface TestEdge extends Edge {
  /** The device reports that its network changed. */
  tellNetwork(): void;
  /** The page becomes visible again. */
  show(): void;
  /** Its clock goes on by so many ms, beside what passes. */
  wait(ms: number): void;
  /** The copies that this device keeps, by name. */
  readonly kept: Map<string, Uint8Array>;
  /** What it keeps next to its copy. */
  readonly notes: Map<string, unknown>;
  /** Allows copies to be read. */
  readCopies(): void;
}

export interface TestEdgeOptions {
  readonly origin: string;
  readonly cookie: string;
  readonly kept?: Map<string, Uint8Array>;
  readonly notes?: Map<string, unknown>;
  /** Copies can be read only when the test allows it. */
  readonly slowCopies?: boolean;
  /** What the server answers over HTTP when no socket opens; no answer when left out. */
  readonly askAddress?: () => Promise<string | null>;
}

export function testEdge(options: TestEdgeOptions): TestEdge {
  const { origin, cookie, kept = new Map(), notes = new Map(), slowCopies = false } = options;
  const { askAddress = async () => null } = options;
  const network = new Set<() => void>();
  const shown = new Set<() => void>();
  let read = () => {};
  let waited = 0;
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
    now: () => performance.now() + waited,
    wait(ms) {
      waited += ms;
    },
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
