/** One after the other, or a few at once, by key: so that many guesses at one moment are counted like many in a row. */
interface Line {
  busy: number;
  readonly waiting: (() => void)[];
}

export class KeyedQueue {
  private readonly lines = new Map<string, Line>();

  /** Runs `work` when fewer than `width` of this key are running; in the order in which they came. */
  async take<T>(key: string, width: number, work: () => Promise<T>): Promise<T> {
    const line = this.lines.get(key) ?? { busy: 0, waiting: [] };
    this.lines.set(key, line);
    // A turn that ends hands its place on, so that nobody who comes just then gets in between.
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
