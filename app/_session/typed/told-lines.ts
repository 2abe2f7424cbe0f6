/** What others did to the plan that changes what this person can do: one line each, on the page until it is closed. */

export interface ToldLine {
  /** The same line is told once. */
  readonly id: string;
  readonly sentence: string;
  /** What belongs to it, read as a list. */
  readonly points?: readonly string[];
}

export class ToldLines {
  private lines: readonly ToldLine[] = [];
  private readonly told = new Set<string>();
  private readonly listeners = new Set<() => void>();

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly get = (): readonly ToldLine[] => this.lines;

  /** False when it was told before. */
  tell(line: ToldLine): boolean {
    if (this.told.has(line.id)) return false;
    this.told.add(line.id);
    this.set([...this.lines, line]);
    return true;
  }
  close(id: string): void {
    this.set(this.lines.filter((line) => line.id !== id));
  }

  private set(lines: readonly ToldLine[]): void {
    this.lines = lines;
    for (const listener of this.listeners) listener();
  }
}
