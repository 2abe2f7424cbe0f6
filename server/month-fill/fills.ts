/** Fills for the running server: one at a time, and the same month once. */
import { contentHash } from "#lib/canonical/canonical.ts";
import type { MonthFile } from "#lib/month/types.ts";
import type { ExplainedFill, Fills } from "#server/context/fills.ts";
import { fillInThread } from "./fill-in-thread.ts";

/** Each may take half a minute of a processor. */
const MOST_WAITING = 4;
/** A month has one answer, so that it can be kept; some kB each. */
const MOST_KEPT = 8;

export function createFills(run: (month: MonthFile) => Promise<ExplainedFill> = fillInThread): Fills {
  const known = new Map<string, Promise<ExplainedFill>>();
  let before: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  const start = (key: string, month: MonthFile): Promise<ExplainedFill> => {
    waiting++;
    const found = before.then(() => run(month)).finally(() => waiting--);
    // The next one starts however this one ends; one that broke is tried again when it is asked for again.
    before = found.catch(() => known.delete(key));
    known.set(key, found);
    for (const old of known.keys()) if (known.size > MOST_KEPT && old !== key) known.delete(old);
    return found;
  };
  return {
    fill(month) {
      const key = contentHash(month);
      return known.get(key) ?? (waiting >= MOST_WAITING ? undefined : start(key, month));
    },
  };
}
