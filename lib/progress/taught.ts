/** A class as it was taught against the plan that it was taught from. */
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { tenth } from "#lib/numbers/round.ts";

export interface TaughtAgainstPlan {
  readonly sessionId: string;
  readonly planId: string;
  readonly edition: number;
  /** ms since the epoch. */
  readonly at: number;
  /** Seconds. */
  readonly planned: number;
  readonly took: number;
  readonly held: number;
  /** True when it ran to its end. */
  readonly whole: boolean;
  /** Steps given more or less than planned by at least a tenth and five seconds, the greatest difference first. */
  readonly off: readonly {
    readonly item: string;
    readonly phase: ClassLog["rows"][number]["phase"];
    readonly by: number;
  }[];
}

/** Our own choice: less is not worth talking about. */
const OFF_SECONDS = 5;
const OFF_SHARE = 0.1;

export function taughtAgainstPlan(log: ClassLog): TaughtAgainstPlan {
  const sum = (of: (row: ClassLog["rows"][number]) => number) => tenth(log.rows.reduce((all, row) => all + of(row), 0));
  const off = log.rows.flatMap(({ item, phase, planned, took }) => {
    const by = tenth(took - planned);
    const matters = item !== null && Math.abs(by) >= OFF_SECONDS && Math.abs(by) >= OFF_SHARE * planned;
    return matters ? [{ item, phase, by }] : [];
  });
  return {
    sessionId: log.sessionId,
    planId: log.edition.planId,
    edition: log.edition.number,
    at: Date.parse(log.startedAt),
    planned: sum(({ planned }) => planned),
    took: sum(({ took }) => took),
    held: sum(({ held }) => held),
    whole: log.whole,
    off: off.sort((a, b) => Math.abs(b.by) - Math.abs(a.by)),
  };
}
