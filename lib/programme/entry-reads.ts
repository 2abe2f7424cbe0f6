/** What was read of entries, by key, until a key is forgotten. Undefined, where nothing can be read, is kept too. */
export class EntryReads<T> {
  private readonly known = new Map<string, T | undefined>();

  get(key: string, read: () => T | undefined): T | undefined {
    const found = this.known.get(key);
    if (found !== undefined || this.known.has(key)) return found;
    const value = read();
    this.known.set(key, value);
    return value;
  }

  forget(key: string): void {
    this.known.delete(key);
  }

  forgetAll(): void {
    this.known.clear();
  }
}
