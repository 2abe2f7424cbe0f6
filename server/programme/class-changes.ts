/** Tells coaches of changed classes that are near: after each burst of edits of a month, and once a minute for what was held back. */
import { lastSeq, writersAfter } from "#db/repos/doc-log-repo.ts";
import { monthSignedAt } from "#db/repos/month-repo.ts";
import { readSetting, writeSetting } from "#db/repos/setting-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { dayNumber, minuteOfDay, monthOf } from "#lib/calendar/days.ts";
import { momentOf } from "#lib/calendar/zone.ts";
import { lastNearDay } from "#lib/month/ics/promised.ts";
import {
  type ClassChange,
  type ClassFacts,
  lookAtClasses,
  NO_CLASSES,
  type ToldClasses,
} from "#lib/notices/class-changes.ts";
import type { MonthState } from "#lib/programme/month-reader.ts";
import { monthClasses, readerOfMonth } from "#lib/programme/read.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioDay, studioZone } from "#server/month-facts/month-settings.ts";
import { PROGRAM_ACTOR } from "#server/sync/room.ts";
import { authorsOf, docNameOf, type EditedMonth, monthOfKey, plannedBy, signedOf } from "./class-sources.ts";
import { monthStateOf } from "./read-month-file.ts";
import { tellClasses } from "./tell-classes.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "newId">;

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** What was told, and up to which row of its log each month was looked at. */
interface Kept extends ToldClasses {
  readonly rows: Readonly<Record<string, number>>;
}
const kept = new WeakMap<App["db"], Kept>();

/** From the database after a start: what nobody was told of yet is told then. */
function keptOf({ db }: App): Kept {
  const known = kept.get(db) ??
    (readSetting(db, "told-classes")?.data as Kept | undefined) ?? { ...NO_CLASSES, rows: {} };
  kept.set(db, known);
  return known;
}

/** `edited`: the month that was just written in; left out for a look that only time asks for. */
export function tellChangedClasses(app: App, edited?: EditedMonth): void {
  if (app.db.damage.known !== null) return;
  const was = keptOf(app);
  const zone = studioZone(app);
  const today = studioDay(app);
  const until = lastNearDay(today);
  const months = new Set([monthOf(today), monthOf(until), ...Object.keys(was.classes).map(monthOfKey)]);
  if (edited && !months.has(edited.month)) {
    if (edited.month < monthOf(today) || monthSignedAt(app.db, edited.month) === null) return;
    months.add(edited.month);
  }
  const states = statesOf(app, months, edited);
  const { told, changes } = lookAtClasses(was, {
    now: app.now(),
    until,
    present: factsOf(states),
    wasRead: (key) => states.has(monthOfKey(key)),
    beginOf: (facts) => startOf(facts, zone),
    by: writersOf(app, was, states),
    authorOf: authorsOf(app, edited),
    signed: signedOf(app, states.keys()),
  });
  keep(app, was, { ...told, rows: rowsOf(app, states) }, changes);
}

/** A month that nobody has opened, or that cannot be read just now, is left out. */
function statesOf(app: App, months: ReadonlySet<string>, edited: EditedMonth | undefined): Map<string, MonthState> {
  const states = new Map<string, MonthState>();
  for (const month of months) {
    const state = month === edited?.month ? readerOfMonth(edited.doc).read() : stateOf(app, month);
    if (state) states.set(month, state);
  }
  return states;
}

function stateOf(app: App, month: string): MonthState | undefined {
  const state = monthStateOf(app, month);
  return state.ok ? state.value : undefined;
}

function factsOf(states: ReadonlyMap<string, MonthState>): Map<string, ClassFacts> {
  const facts = new Map<string, ClassFacts>();
  for (const [month, state] of states)
    for (const slot of monthClasses(state)) facts.set(`${month}/${slot.id}`, plannedBy(slot));
  return facts;
}

const startOf = ({ date, start }: ClassFacts, zone: string): number =>
  momentOf(dayNumber(date) * DAY_MS + minuteOfDay(start) * MINUTE_MS, zone).at;

/** Of a burst in two months at once, the writers of both. The program's own notes are nobody's. */
function writersOf({ db }: App, { rows }: Kept, states: ReadonlyMap<string, MonthState>): string[] {
  const writers = [...states.keys()].flatMap((month) =>
    writersAfter(db, docNameOf(month), rows[month] ?? lastSeq(db, docNameOf(month)) - 1),
  );
  return [...new Set(writers)].filter((id) => id !== PROGRAM_ACTOR);
}

const rowsOf = ({ db }: App, states: ReadonlyMap<string, MonthState>): Record<string, number> =>
  Object.fromEntries([...states.keys()].map((month) => [month, lastSeq(db, docNameOf(month))]));

/** Notices and what they tell are one transaction. Rows alone are kept in memory: after a start, more writers are looked at. */
function keep(app: App, was: Kept, now: Kept, changes: readonly ClassChange[]): void {
  if (changes.length > 0 || !sameTold(was, now)) {
    inTransaction(app.db, () => {
      tellClasses(app, changes);
      writeSetting(app.db, "told-classes", { data: now, updatedAt: app.now() });
    });
  }
  kept.set(app.db, now);
}

const sameTold = (a: Kept, b: Kept): boolean =>
  a.until === b.until && JSON.stringify(a.classes) === JSON.stringify(b.classes);
