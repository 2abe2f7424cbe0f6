/** Ids for new items. `crypto.randomUUID` is missing on plain http to another machine, so random bytes are used. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(10));
  return `i${Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("")}`;
}
