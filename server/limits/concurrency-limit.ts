/** Limits how many of something each key may have at once: sockets of a network, or of a person. */
export class ConcurrencyLimit {
  private readonly taken = new Map<string, number>();
  private readonly most: number;

  constructor(most: number) {
    this.most = most;
  }

  /** Takes one for `key` and returns a function that releases it. Undefined when the key has reached its limit. */
  take(key: string): (() => void) | undefined {
    const count = this.taken.get(key) ?? 0;
    if (count >= this.most) return undefined;
    this.taken.set(key, count + 1);
    let there = true;
    return () => {
      if (there) this.leave(key);
      there = false;
    };
  }

  private leave(key: string): void {
    const left = (this.taken.get(key) ?? 1) - 1;
    if (left > 0) this.taken.set(key, left);
    else this.taken.delete(key);
  }
}
