/**
 * A cache of whole documents, encoded for a page that has nothing, valid until they change. Before a class a whole team
 * opens the same plan at once, and a plan with a long history is slow to encode. One limit applies to all rooms together.
 */
import type { Frame } from "./frames.ts";

const MOST_BYTES = 32 * 1024 * 1024;

export class WholeStates<Owner> {
  private readonly kept = new Map<Owner, Frame>();
  private bytes = 0;

  /** The cached frame, or a new one. */
  of(owner: Owner, make: () => Frame): Frame {
    const known = this.kept.get(owner);
    if (known) return known;
    const frame = make();
    this.kept.set(owner, frame);
    this.bytes += frame.byteLength;
    for (const [oldest] of this.kept) {
      if (this.bytes <= MOST_BYTES) break;
      this.forget(oldest);
    }
    return frame;
  }

  /** The document has changed or been unloaded. */
  forget(owner: Owner): void {
    const known = this.kept.get(owner);
    if (!known) return;
    this.kept.delete(owner);
    this.bytes -= known.byteLength;
  }
}
