/** Goes through a list in parts, over and over, so that other work can run in between. */
export class Sweep<T> {
  /** Parts per round. */
  static readonly PARTS = 10;
  private part = 0;

  /** The next part of the list as it is now. What stays in the list for a whole round is visited once. */
  next(all: readonly T[]): readonly T[] {
    const size = Math.ceil(all.length / Sweep.PARTS);
    const from = this.part * size;
    this.part = (this.part + 1) % Sweep.PARTS;
    return all.slice(from, from + size);
  }
}
