/**
 * Of which class of the programme a log is, who led it, and whether it counts. A log names no person: who led it is whom somebody
 * named on it, else who stood in the programme.
 */
import { listClassLogRemarks } from "#db/repos/class-log-remark-repo.ts";
import { addMonths, monthOf } from "#lib/calendar/days.ts";
import { type LoggedStart, matchLog, type PlannedClass } from "#lib/look-back/match.ts";
import { type LogStanding, logStanding } from "#lib/look-back/remarks.ts";
import { clockOfMonth, timeSlot } from "#lib/month/instants.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { monthClasses } from "#lib/programme/read.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioZone, wallClockText } from "#server/month-facts/month-settings.ts";
import { monthStateOf } from "#server/programme/read-month-file.ts";

type App = Pick<Springline, "db" | "documents">;

/** A class of the programme that takes place. */
export interface ProgrammeClass extends PlannedClass {
  readonly slot: MonthSlot;
}
export interface LedClass extends LogStanding {
  readonly planned: ProgrammeClass | null;
  /** Null when nobody knows. */
  readonly coachId: string | null;
}

const DAY_MS = 86_400_000;

/** For many logs at once: each month of the programme is read once. */
export class LedClasses {
  private readonly months = new Map<string, readonly ProgrammeClass[]>();

  private readonly zone: string;

  constructor(private readonly app: App) {
    this.zone = studioZone(app);
  }

  /** `key`: the log's own. */
  of(log: LoggedStart & { readonly key: string }): LedClass {
    const standing = logStanding(listClassLogRemarks(this.app.db, log.key));
    const planned = matchLog(log, this.around(log.startedAt));
    return { ...standing, planned, coachId: standing.named?.coachId ?? planned?.slot.coach ?? null };
  }

  /** By time; empty for a month that nobody has written in, or that cannot be read just now. */
  inMonth(month: string): readonly ProgrammeClass[] {
    const known = this.months.get(month);
    if (known) return known;
    const state = monthStateOf(this.app, month);
    const classes = state.ok ? classesIn(monthClasses(state.value), this.zone, state.value.dates) : [];
    this.months.set(month, classes);
    return classes;
  }

  /** Also those of the months beside it: a class near midnight may be theirs. */
  private around(at: number): readonly ProgrammeClass[] {
    const months = new Set([at - DAY_MS, at, at + DAY_MS].map((day) => monthOf(wallClockText(day, this.zone))));
    return [...months].flatMap((month) => this.inMonth(month));
  }
}

function classesIn(
  slots: readonly MonthSlot[],
  zone: string,
  dates: { readonly from: string; readonly to: string },
): ProgrammeClass[] {
  const clock = clockOfMonth({ zone, dates });
  return slots
    .filter(({ out }) => out !== true)
    .map((slot) => {
      const { from, to } = timeSlot(slot, clock);
      const { id, date, room = null, plan = null } = slot;
      return { id, date, from, to, room, plan, slot };
    });
}

/** The instants between which a month's days are, in the studio's zone, with a day more on either side. */
export function spanOfMonth(month: string): { readonly from: number; readonly to: number } {
  const start = (of: string) => Date.parse(`${of}-01T00:00:00Z`);
  return { from: start(month) - DAY_MS, to: start(addMonths(month, 1)) + DAY_MS };
}
