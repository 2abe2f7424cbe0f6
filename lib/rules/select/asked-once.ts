/** What has been asked for in a block, so that nobody is asked twice. */
export class AskedOnce<T> {
  private readonly asked = new Map<number, Set<T>>();

  /** Those of `wanted` that have not been asked for in the block yet; from now on they have. */
  first({ block }: { readonly block: number }, wanted: readonly T[]): T[] {
    const asked = this.asked.get(block) ?? new Set<T>();
    this.asked.set(block, asked);
    return wanted.filter((one) => !asked.has(one) && asked.add(one));
  }
}
