/** The months that a calendar holds, each as it stands and as it was signed off last. */
import type { Db } from "#db/connection.ts";
import { newestSignedMonth } from "#db/repos/month-edition-repo.ts";
import { addMonths, dateOfDay, monthOf } from "#lib/calendar/days.ts";
import { wallTimeAt } from "#lib/calendar/zone.ts";
import type { SeveralMonths } from "#lib/month/ics/feed.ts";
import { promisedMonth } from "#lib/month/ics/promised.ts";
import type { MonthFile } from "#lib/month/types.ts";
import type { Springline } from "#server/context/springline.ts";
import { liveMonth, studioZone } from "./live-month.ts";

/** Last month, so that what was given stays for a while; two ahead, as far as a team plans. Our own choice. */
const OTHERS = { back: 1, ahead: 2 } as const;
const DAY_MS = 86_400_000;

interface TwoMonths {
  readonly live: MonthFile;
  readonly signed: MonthFile | undefined;
}

export interface CalendarMonths {
  /** All that the calendar is made from, for comparing by identity. */
  readonly reads: readonly unknown[];
  /** The months as the calendar tells them. */
  promised(): SeveralMonths;
}

export function calendarMonths(app: Pick<Springline, "db" | "documents" | "now">): CalendarMonths {
  const today = todayInStudio(app);
  const present = monthOf(today);
  const of = (month: string): TwoMonths => ({ live: liveMonth(app, month), signed: signedMonth(app.db, month) });
  const first = of(addMonths(present, -OTHERS.back));
  const rest = Array.from({ length: OTHERS.back + OTHERS.ahead }, (_, i) =>
    of(addMonths(present, i + 1 - OTHERS.back)),
  );
  const told = ({ live, signed }: TwoMonths) => (signed ? promisedMonth(signed, live, today) : live);
  return {
    reads: [today, ...[first, ...rest].flatMap(({ live, signed }) => [live, signed])],
    promised: () => [told(first), ...rest.map(told)],
  };
}

/** 'YYYY-MM-DD' by the studio's clock. */
export const todayInStudio = (app: Pick<Springline, "db" | "now">): string =>
  dateOfDay(Math.floor(wallTimeAt(app.now(), studioZone(app)) / DAY_MS));

const parsed = new WeakMap<Db, Map<string, { readonly number: number; readonly file: MonthFile }>>();

/** As it was signed off last; undefined before. An edition never changes, so it is parsed once. */
function signedMonth(db: Db, month: string): MonthFile | undefined {
  const newest = newestSignedMonth(db, month);
  if (!newest) return undefined;
  const known = parsed.get(db) ?? new Map();
  parsed.set(db, known);
  const kept = known.get(month);
  if (kept?.number === newest.number) return kept.file;
  const file = JSON.parse(newest.fileJson) as MonthFile; // written by the sign-off only
  known.set(month, { number: newest.number, file });
  return file;
}
