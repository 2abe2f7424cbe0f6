/** Waits for a condition with a deadline instead of sleeping. */

/** Resolves with the first value that is neither undefined nor false. Rejects after `ms`, naming what did not happen. */
export async function eventually<T>(what: string, look: () => T | undefined | false, ms = 5000): Promise<T> {
  const deadline = performance.now() + ms;
  for (;;) {
    const value = look();
    if (value !== undefined && value !== false) return value;
    if (performance.now() > deadline) throw new Error(`did not happen within ${ms} ms: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 3));
  }
}
