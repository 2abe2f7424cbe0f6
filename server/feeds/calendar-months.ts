/** The months that a calendar holds, each as it stands and as it was signed off last. */
import { createHash } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { newestMonthEdition } from "#db/repos/month-edition-repo.ts";
import { addMonths, dayNumber, monthOf } from "#lib/calendar/days.ts";
import { momentOf } from "#lib/calendar/zone.ts";
import type { SeveralMonths } from "#lib/month/ics/feed.ts";
import { promisedMonth } from "#lib/month/ics/promised.ts";
import type { MonthFile } from "#lib/month/types.ts";
import type { Person } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioDay, studioZone } from "#server/month-facts/month-settings.ts";
import { signedMonthFile } from "#server/month-facts/signed-month-file.ts";
import { type LiveMonth, liveMonth } from "./live-month.ts";

/** Last month, so that what was given stays for a while; two ahead, as far as a team plans. Our own choice. */
const OTHERS = { back: 1, ahead: 2 } as const;

interface TwoMonths {
  readonly live: LiveMonth;
  readonly signed: SignedFile | undefined;
}

export interface CalendarMonths {
  /** The same text for the same months: a calendar is made again only when it differs. */
  readonly mark: string;
  /** Since when these are its months, an INSTANT: the beginning of the present one by the studio's clock. */
  readonly since: string;
  /** The months as the calendar tells them. */
  promised(): SeveralMonths;
}

/** Errors: 409, 503 when a month cannot be read: a calendar without it would take its classes off every phone. */
export function calendarMonths(
  app: Pick<Springline, "db" | "documents" | "now" | "newId">,
  reader: Person,
): Result<CalendarMonths> {
  const today = studioDay(app);
  const present = monthOf(today);
  const of = (step: number): Result<TwoMonths> => {
    const month = addMonths(present, step);
    const live = liveMonth(app, reader, month);
    return live.ok ? ok({ live: live.value, signed: signedMonth(app.db, month) }) : live;
  };
  const first = of(-OTHERS.back);
  if (!first.ok) return first;
  const rest: TwoMonths[] = [];
  for (let step = 1 - OTHERS.back; step <= OTHERS.ahead; step++) {
    const other = of(step);
    if (!other.ok) return other;
    rest.push(other.value);
  }
  const told = ({ live: { file, numbers }, signed }: TwoMonths) =>
    signed ? promisedMonth(signed.file, file, today, numbers) : file;
  const mark = markOf(today, [first.value, ...rest]);
  return ok({ mark, since: beginOf(app, present), promised: () => [told(first.value), ...rest.map(told)] });
}

const beginOf = (app: Pick<Springline, "db">, month: string): string =>
  `${new Date(momentOf(dayNumber(`${month}-01`) * 86_400_000, studioZone(app)).at).toISOString().slice(0, 19)}Z`;

function markOf(today: string, months: readonly TwoMonths[]): string {
  const hash = createHash("sha256").update(today);
  for (const { live, signed } of months) hash.update(JSON.stringify([signed?.number ?? 0, live]));
  return hash.digest("base64url");
}

interface SignedFile {
  readonly number: number;
  readonly file: MonthFile;
}

/** As it was signed off last; undefined before, and where what is stored is no longer what was signed. */
function signedMonth(db: Db, month: string): SignedFile | undefined {
  const newest = newestMonthEdition(db, month);
  const file = signedMonthFile(newest);
  return newest && file && { number: newest.number, file };
}
