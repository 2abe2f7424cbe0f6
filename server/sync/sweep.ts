/** Goes round a list in parts, so that whoever waits is let through in between. */
export class Sweep<T> {
  /** How many parts make one round. */
  static readonly PARTS = 10;
  private part = 0;

  /** The next part of the list as it is now. What is there for a whole round is met in it. */
  next(all: readonly T[]): readonly T[] {
    const size = Math.ceil(all.length / Sweep.PARTS);
    const from = this.part * size;
    this.part = (this.part + 1) % Sweep.PARTS;
    return all.slice(from, from + size);
  }
}
