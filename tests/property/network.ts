/**
 * Writers around a hub over an in-memory network controlled by the test: nothing arrives until it is delivered,
 * and messages may be delivered out of order, twice, or never. Reconnecting exchanges what each side lacks.
 */
import * as Y from "yjs";

type Way = "up" | "down";

class Line {
  readonly up: Uint8Array[] = [];
  readonly down: Uint8Array[] = [];
  connected = true;
}

export class Network {
  readonly hub: Y.Doc;
  readonly writers: readonly Y.Doc[];
  /** Every change once, as its writer made it. */
  readonly everyUpdate: Uint8Array[];
  dropped = 0;
  duplicated = 0;
  reordered = 0;
  private readonly lines: readonly Line[];

  constructor(start: Uint8Array, writers: number) {
    this.everyUpdate = [start];
    this.hub = replica(start, 1000);
    this.writers = Array.from({ length: writers }, (_, i) => replica(start, i + 1));
    this.lines = this.writers.map(() => new Line());
    this.writers.forEach((doc, i) => {
      doc.on("update", (update: Uint8Array, origin: unknown) => {
        if (origin === this) return;
        this.everyUpdate.push(update);
        if (this.line(i).connected) this.line(i).up.push(update);
      });
    });
    this.hub.on("update", (update: Uint8Array) => {
      for (const line of this.lines) if (line.connected) line.down.push(update);
    });
  }

  /** Delivers any one message in transit, and sometimes keeps a copy that arrives again. */
  deliver(writer: number, way: Way, pick: number, again: boolean): void {
    const queue = this.line(writer)[way];
    if (queue.length === 0) return;
    const index = pick % queue.length;
    if (index > 0) this.reordered++;
    if (again) this.duplicated++;
    const [message] = again ? [queue[index]] : queue.splice(index, 1);
    if (message) this.arrive(writer, way, message);
  }

  /** Loses one message. */
  drop(writer: number, way: Way, pick: number): void {
    const queue = this.line(writer)[way];
    if (queue.length === 0) return;
    this.dropped++;
    queue.splice(pick % queue.length, 1);
  }

  /** Loses everything in transit. */
  disconnect(writer: number): void {
    const line = this.line(writer);
    line.connected = false;
    this.dropped += line.up.length + line.down.length;
    line.up.length = 0;
    line.down.length = 0;
  }

  /** Both sides tell what they have and get what they lack. */
  reconnect(writer: number): void {
    const doc = this.doc(writer);
    this.line(writer).connected = true;
    Y.applyUpdate(this.hub, Y.encodeStateAsUpdate(doc, Y.encodeStateVector(this.hub)), this);
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(this.hub, Y.encodeStateVector(doc)), this);
  }

  flush(): void {
    for (let busy = true; busy; ) {
      busy = false;
      this.lines.forEach((line, i) => {
        for (const way of ["up", "down"] as const) {
          for (const message of line[way].splice(0)) {
            busy = true;
            this.arrive(i, way, message);
          }
        }
      });
    }
  }

  /** Everybody reconnects and everything arrives. Done twice, since what one brings back must reach the others. */
  settle(): void {
    for (let round = 0; round < 2; round++) {
      for (let i = 0; i < this.writers.length; i++) this.reconnect(i);
      this.flush();
    }
  }

  get docs(): readonly Y.Doc[] {
    return [this.hub, ...this.writers];
  }

  private arrive(writer: number, way: Way, message: Uint8Array): void {
    Y.applyUpdate(way === "up" ? this.hub : this.doc(writer), message, this);
  }
  private line(i: number): Line {
    return this.lines[i % this.lines.length] as Line;
  }
  private doc(i: number): Y.Doc {
    return this.writers[i % this.writers.length] as Y.Doc;
  }
}

/** With a client id chosen by the test, since the winner of a tie would otherwise differ from run to run. */
function replica(start: Uint8Array, clientId: number): Y.Doc {
  const doc = new Y.Doc();
  doc.clientID = clientId;
  Y.applyUpdate(doc, start);
  return doc;
}
