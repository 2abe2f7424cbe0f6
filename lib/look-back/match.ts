/** Which planned class a class log is of. */

/** A class of the programme; instants in ms since the epoch. */
export interface PlannedClass {
  readonly id: string;
  /** 'YYYY-MM-DD' in the studio. */
  readonly date: string;
  readonly from: number;
  readonly to: number;
  readonly room: string | null;
  readonly plan: string | null;
}
export interface LoggedStart {
  readonly roomId: string;
  readonly planId: string;
  /** ms since the epoch. */
  readonly startedAt: number;
}

const MINUTE_MS = 60_000;
/** A log further from a class than this is of none. */
const REACH_MS = 90 * MINUTE_MS;
/** Two classes whose distances differ by less are told apart by the plan: a late start may be nearer to the next class. Our own choice. */
const TIE_MS = 15 * MINUTE_MS;

/**
 * The class in the same room whose start is nearest, within 90 minutes; of those about as near, the one with the log's plan. A class
 * that has no room yet counts where it has the log's plan. The first of equals in time, then by id. Null for none.
 */
export function matchLog<C extends PlannedClass>(log: LoggedStart, planned: readonly C[]): C | null {
  const near = planned
    .map((one) => ({ one, off: Math.abs(one.from - log.startedAt), same: one.plan === log.planId }))
    .filter(({ one, off, same }) => off <= REACH_MS && (one.room === null ? same : one.room === log.roomId))
    .sort((a, b) => a.off - b.off || a.one.from - b.one.from || (a.one.id < b.one.id ? -1 : 1));
  const [nearest] = near;
  if (!nearest) return null;
  const tied = near.filter(({ off }) => off - nearest.off < TIE_MS);
  return (tied.find(({ same }) => same) ?? nearest).one;
}
