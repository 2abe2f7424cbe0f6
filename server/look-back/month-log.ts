/** A class log of a month with what is known of it. */
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { TaughtEnd } from "#lib/look-back/taught.ts";
import type { LedClass } from "#server/class-log/led-classes.ts";

export interface MonthLog extends LedClass {
  readonly key: string;
  readonly log: ClassLog;
  readonly roomId: string;
  /** ms since the epoch. */
  readonly startedAt: number;
  readonly end: TaughtEnd;
}
