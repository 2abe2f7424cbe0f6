/**
 * Whole documents as they were last sent to a page that had nothing, until they change: before a class a team opens one plan
 * at one moment, and a plan with many edits behind it takes long to put into bytes. Bounded over all rooms together.
 */
import type { Frame } from "./frames.ts";

const MOST_BYTES = 32 * 1024 * 1024;

export class WholeStates<Owner> {
  private readonly kept = new Map<Owner, Frame>();
  private bytes = 0;

  /** The frame that is kept, or the one made now. */
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

  /** It has changed, or is gone. */
  forget(owner: Owner): void {
    const known = this.kept.get(owner);
    if (!known) return;
    this.kept.delete(owner);
    this.bytes -= known.byteLength;
  }
}
