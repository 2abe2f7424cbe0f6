/** Keeps the objects of an earlier result in a new one wherever they are equal, so that what did not change is the same object. */

/** `now`, with every part that equals the one at its place in `was` replaced by it. Plain data; members of lists pair by `id` or place. */
export function keepSame<T>(was: unknown, now: T): T {
  if (Object.is(was, now) || typeof was !== "object" || typeof now !== "object" || was === null || now === null)
    return now;
  if (Array.isArray(now)) return Array.isArray(was) ? (keepList(was, now) as T) : now;
  if (Array.isArray(was)) return now;
  const before = was as Record<string, unknown>;
  const entries = Object.entries(now).map(([key, value]) => [key, keepSame(before[key], value)] as const);
  const same = entries.length === Object.keys(was).length && entries.every(([key, value]) => before[key] === value);
  return (same ? was : Object.fromEntries(entries)) as T;
}

function keepList(was: readonly unknown[], now: readonly unknown[]): readonly unknown[] {
  const byId = new Map(was.map((one) => [idOf(one), one]));
  const kept = now.map((one, i) => keepSame(idOf(one) === undefined ? was[i] : byId.get(idOf(one)), one));
  return kept.length === was.length && kept.every((one, i) => one === was[i]) ? was : kept;
}

const idOf = (one: unknown): unknown =>
  typeof one === "object" && one !== null && "id" in one ? (one as { id: unknown }).id : undefined;
