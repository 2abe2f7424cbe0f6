/** Runs work one at a time, or a few at once, per key: guesses sent in parallel are then counted like guesses in a row. */
interface Line {
  busy: number;
  readonly waiting: (() => void)[];
}

export class KeyedQueue {
  private readonly lines = new Map<string, Line>();

  /** Runs `work` once fewer than `width` of this key are running, in the order of the calls. */
  async take<T>(key: string, width: number, work: () => Promise<T>): Promise<T> {
    const line = this.lines.get(key) ?? { busy: 0, waiting: [] };
    this.lines.set(key, line);
    // Work that ends hands its slot to the next in line, so that a new caller cannot slip in between.
    if (line.busy >= width) await new Promise<void>((go) => line.waiting.push(go));
    else line.busy++;
    try {
      return await work();
    } finally {
      const next = line.waiting.shift();
      if (next) next();
      else if (--line.busy === 0) this.lines.delete(key);
    }
  }
}
