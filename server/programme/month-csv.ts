/** A month as a spreadsheet's table, and classes from one. */
import { MOST_SLOTS } from "#lib/month/file/cross-check.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { agree, plural } from "#lib/plan/format.ts";
import type { Actor } from "#lib/policy/can.ts";
import { atMost, type CsvClass, readMonthCsv } from "#lib/programme/csv-in.ts";
import { namesIn } from "#lib/programme/csv-names.ts";
import { monthToCsv } from "#lib/programme/csv-out.ts";
import { monthFileOf } from "#lib/programme/month-file.ts";
import type { MonthState } from "#lib/programme/month-reader.ts";
import { monthClasses, readMonthState } from "#lib/programme/read.ts";
import { roomLeft, tooManyWords } from "#lib/programme/room-left.ts";
import { addSlot } from "#lib/programme/write.ts";
import { addRegulars, themeNamed } from "#lib/programme/write-lists.ts";
import { fail, ok, type Result } from "#server/base/result.ts";
import { monthDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { mayWriteMonth, writing } from "./import-month.ts";
import { monthStudioOf, readMonthFileOf } from "./read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "newId">;

export function readMonthTable(app: App, actor: Actor, month: string): Result<{ text: string; fileName: string }> {
  const file = readMonthFileOf(app, actor, month);
  return file.ok ? ok({ text: monthToCsv(file.value), fileName: `month-${month}.csv` }) : file;
}

export interface ImportedTable {
  /** How many classes were added, or would be. */
  readonly added: number;
  /** Lines whose class stands in the month already. */
  readonly there: number;
  readonly notes: readonly string[];
  /** Lines that are no class, in sentences; left out where there is none. */
  readonly unread?: readonly string[];
}

type Writer = Parameters<typeof addSlot>[0];

/** `whole`: only if every line can be read. `readable`: the lines that can be. `look`: says what `readable` would do, and does nothing. */
export type TableTaking = "whole" | "readable" | "look";

/**
 * Adds the classes of a table; one that is there already is left as it is. Errors: 400 not-a-table with a sentence a line, 409
 * month-full.
 */
export function importMonthTable(
  app: App,
  actor: Actor,
  month: string,
  text: string,
  taking: TableTaking = "whole",
): Result<ImportedTable> {
  const may = mayWriteMonth(app, actor, month);
  if (!may.ok) return may;
  return writing(() =>
    app.documents.transact(monthDoc(month), may.value.id, (doc) => {
      const file = monthFileOf(readMonthState(doc), monthStudioOf(app, actor, month, readMonthState(doc)));
      const read = readMonthCsv(text, month, namesIn(file));
      if (!read.ok) return notTable(read.say);
      if (taking === "whole" && read.unread.length > 0) return notTable(atMost(read.unread));
      const state = readMonthState(doc);
      const known = new Map(monthClasses(state).map((slot) => [placeOf(slot), slot]));
      const fresh = read.classes.filter((one) => !known.has(placeOf(one)));
      const room = roomLeft(file);
      if (fresh.length > room) return fail(409, "month-full", tooManyWords(MOST_SLOTS - room + fresh.length));
      const made = new MadeNames({ doc, origin: "server" }, app, state.themes);
      const added =
        taking === "look"
          ? fresh
          : fresh.filter((one) => addSlot(made.w, { ...made.completed(one), id: app.newId() }, app.now()));
      const unread = read.unread.length > 0 ? { unread: atMost(read.unread) } : {};
      const notes = [...read.notes, ...differing(read.classes, known), ...(taking === "look" ? newNames(fresh) : [])];
      return ok({ added: added.length, there: read.classes.length - fresh.length, notes, ...unread });
    }),
  );
}

const notTable = (say: readonly string[]) => fail(400, "not-a-table", `Nothing was taken. ${say.join(" ")}`, say);

/** Of the classes that stand there already, which the table has otherwise: they are left as they are, and that is said. */
function differing(classes: readonly CsvClass[], known: ReadonlyMap<string, MonthSlot>): string[] {
  const parts = ["coach", "plan", "theme"] as const;
  const count = classes.filter((one) => {
    const there = known.get(placeOf(one));
    return there && parts.some((part) => one[part] !== undefined && one[part] !== there[part]);
  }).length;
  if (count === 0) return [];
  return [
    `${plural(count, "class stands", "classes stand")} there with another coach, plan or theme than in the table, and ${agree(count, "stays as it is", "stay as they are")}.`,
  ];
}

/** What taking the classes would make beside them: a name that is only misspelt is seen in time. */
function newNames(classes: readonly CsvClass[]): string[] {
  const said = (what: string, names: readonly string[]) =>
    names.length === 0 ? [] : [`New here, and made with the classes: ${what} ${[...new Set(names)].join(", ")}.`];
  return [
    ...said(
      "theme",
      classes.flatMap(({ newTheme }) => newTheme ?? []),
    ),
    ...said(
      "regulars",
      classes.flatMap(({ newRegulars }) => newRegulars ?? []),
    ),
  ];
}

const placeOf = ({ date, start, minutes, room }: Pick<CsvClass, "date" | "start" | "minutes" | "room">): string =>
  [date, start, minutes, room ?? ""].join(" ");

/** The themes and groups of regulars that the table names and the month does not have: each is made once. */
class MadeNames {
  private readonly themes = new Map<string, string | null>();
  private readonly regulars = new Map<string, string>();

  constructor(
    readonly w: Writer,
    private readonly app: Pick<App, "newId">,
    private readonly there: MonthState["themes"],
  ) {}

  completed({ newTheme, newRegulars = [], ...slot }: CsvClass) {
    const theme = newTheme === undefined ? (slot.theme ?? null) : this.theme(newTheme);
    const regulars = [...(slot.regulars ?? []), ...newRegulars.map((name) => this.group(name))];
    return { ...slot, ...(theme === null ? {} : { theme }), ...(regulars.length > 0 ? { regulars } : {}) };
  }

  private theme(name: string): string | null {
    const key = name.toLowerCase();
    const id = this.themes.get(key) ?? themeNamed(this.w, name, this.there);
    this.themes.set(key, id);
    return id;
  }

  private group(name: string): string {
    const key = name.toLowerCase();
    const known = this.regulars.get(key);
    if (known !== undefined) return known;
    const id = this.app.newId();
    addRegulars(this.w, id, { name });
    this.regulars.set(key, id);
    return id;
  }
}
