/**
 * Keeps what was read of a month's document, and reads again only the entries that have changed since. A month of four hundred
 * classes is read at every key press in one of them.
 */
import * as Y from "yjs";
import { daysOfMonth, isMonth } from "#lib/calendar/days.ts";
import { keepSame } from "#lib/memo/keep-same.ts";
import { Kept } from "#lib/memo/kept.ts";
import type { ById, FillWanted, MonthSlot, MonthTheme, PatternLine, Regulars } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { type CarriedParts, readCarriedParts } from "./carried.ts";
import { EntryReads } from "./entry-reads.ts";
import { DOT, type MonthDocParts, monthParts } from "./layout.ts";
import { type CoachTimes, readCoachTimes, readFill, readHolidays, readRegulars, readThemes } from "./read-lists.ts";
import { byPlace, type LineRead, type ReadSlot, readChanged, readPatternLine, readSingle } from "./read-slots.ts";
import { NO_REVISIONS, type Revisions, revisionsAfter } from "./revisions.ts";
import { lateTheme } from "./typed-themes.ts";
import { changedBySlot, flatOf, type KnownIds } from "./values.ts";

/** Everything that a month's document holds. Its slots are those of the month file: single ones and changed occurrences. */
export interface MonthState {
  /** 'YYYY-MM'; "" when the document has none. */
  readonly month: string;
  readonly dates: { readonly from: string; readonly to: string };
  readonly title: string;
  readonly holidays: ById<string>;
  readonly regulars: ById<Regulars>;
  readonly themes: ById<MonthTheme>;
  readonly coachTimes: ById<CoachTimes>;
  readonly pattern: readonly PatternLine[];
  readonly slots: readonly MonthSlot[];
  readonly fill?: FillWanted;
  readonly carried: CarriedParts;
  readonly revisions: Revisions;
  /** Optional parts of the month file that an imported one had, though nothing was in them. */
  readonly given: readonly string[];
  /** When a single slot or a line was added, ms since the epoch; 0 where it does not say. */
  readonly made: ById<number>;
}

type PartName = keyof MonthDocParts;
/** Parts that are short, and read whole. */
const WHOLE: readonly PartName[] = ["meta", "title", "head", "holidays", "regulars", "themes", "coaches", "carried"];

/**
 * Reads one document again and again; what did not change stays the same object. Watches it until `end`. Must not be asked within
 * a transaction, since it hears of that transaction's changes only at its end.
 */
export class MonthReader {
  private readonly p: MonthDocParts;
  private readonly offs: (() => void)[] = [];
  /** Parts that have not changed since they were read last. */
  private readonly fresh = new Set<PartName>();
  private readonly parts = new Map<PartName, unknown>();
  private readonly lines = new EntryReads<LineRead>();
  private readonly singles = new EntryReads<ReadSlot>();
  private readonly occurrences = new EntryReads<ReadSlot>();
  private readonly late = new EntryReads<ReturnType<typeof lateTheme>>();
  private revisions = NO_REVISIONS;
  private readonly revised: Set<string>;
  private readonly changed: Map<string, Map<string, unknown>>;
  private readonly present = new Kept<KnownIds>();
  private readonly slots = new Kept<readonly ReadSlot[]>();
  private readonly takenOut = new Kept<readonly ReadSlot[]>();
  /** How often a class or a line has changed. */
  private edits = 0;
  private readFor: KnownIds | undefined;
  private last: MonthState | undefined;
  private stale = true;

  constructor(doc: Y.Doc) {
    this.p = monthParts(doc);
    this.changed = changedBySlot(this.p.changed);
    this.revised = new Set([...this.p.revisions.keys()].sort());
    for (const name of WHOLE) this.watch(name, () => undefined);
    this.watch("lines", (id) => this.forgetLine(id));
    this.watch("slots", (id) => this.forgetSlot(id));
    this.watch("changed", (key) => this.forgetChanged(key));
    this.watch("revisions", (key) => this.revised.add(key));
  }

  read(): MonthState {
    if (this.last && !this.stale) return this.last;
    const { p } = this;
    const head = this.whole("head", () => headOf(p));
    const regulars = this.whole("regulars", () => readRegulars(p));
    const themes = this.themes();
    this.readWith(regulars, themes);
    const lines = this.whole("lines", () => this.readLines());
    const slots = this.slots.get([this.edits, this.readFor, head.dates], () => this.readSlots(head.dates));
    const now: MonthState = {
      ...{ ...head, regulars, themes },
      title: this.whole("title", () => p.title.toString()),
      holidays: this.whole("holidays", () => readHolidays(p)),
      coachTimes: this.whole("coaches", () => readCoachTimes(p)),
      pattern: lines.map(({ line }) => line),
      slots: slots.map(({ slot }) => slot),
      carried: this.whole("carried", () => readCarriedParts(p.carried)),
      revisions: this.readRevisions(),
      made: madeOf(lines, slots, this.last?.made),
    };
    this.stale = false;
    this.last = keepSame(this.last, now);
    return this.last;
  }

  /** Single classes that were taken out as a mistake, by date, start and id. */
  mistakes(): readonly ReadSlot[] {
    const { dates } = this.read();
    return this.takenOut.get([this.edits, this.readFor, dates], () =>
      this.singlesRead()
        .filter((one) => one.isTakenOut && isWithin(one, dates))
        .sort(byPlace),
    );
  }

  end(): void {
    for (const off of this.offs) off();
  }

  private whole<T>(name: PartName, read: () => T): T {
    if (!this.fresh.has(name)) {
      this.parts.set(name, keepSame(this.parts.get(name), read()));
      this.fresh.add(name);
    }
    return this.parts.get(name) as T; // what the same reading gave
  }

  /** Whatever refers to groups or themes is read again once others of them are there. */
  private readWith(regulars: ById<Regulars>, themes: ById<MonthTheme>): void {
    const present = this.present.get([...Object.keys(regulars), null, ...Object.keys(themes)], () => ({
      regulars: (id) => own(regulars, id) !== undefined,
      themes: (id) => own(themes, id) !== undefined,
    }));
    if (present === this.readFor) return;
    this.readFor = present;
    this.fresh.delete("lines");
    for (const reads of [this.lines, this.singles, this.occurrences]) reads.forgetAll();
  }

  private themes(): ById<MonthTheme> {
    const known = this.whole("themes", () => readThemes(this.p));
    const late: Record<string, MonthTheme> = {};
    for (const id of this.p.slots.keys()) {
      const asked = this.late.get(id, () => lateTheme(this.p.slots.get(id)));
      if (asked && own(known, asked.id) === undefined) late[asked.id] = asked.theme;
    }
    return Object.keys(late).length === 0 ? known : { ...known, ...late };
  }

  private readLines(): readonly LineRead[] {
    const { p, readFor: present } = this;
    return [...p.lines.keys()]
      .flatMap((id) => this.lines.get(id, () => present && readPatternLine(id, p.lines.get(id), present)) ?? [])
      .sort((a, b) => a.order - b.order || (a.line.id < b.line.id ? -1 : 1));
  }

  private readSlots(dates: MonthState["dates"]): readonly ReadSlot[] {
    const { p, readFor: present } = this;
    const singles = this.singlesRead().filter(({ isTakenOut }) => !isTakenOut);
    const changed = [...this.changed].flatMap(([id, keys]) =>
      p.slots.has(id) ? [] : (this.occurrences.get(id, () => present && readChanged(p, id, keys, present)) ?? []),
    );
    return [...singles, ...changed].filter((one) => isWithin(one, dates)).sort(byPlace);
  }

  private singlesRead(): ReadSlot[] {
    const { p, readFor: present } = this;
    return [...p.slots.keys()].flatMap(
      (id) => this.singles.get(id, () => present && readSingle(id, p.slots.get(id), present)) ?? [],
    );
  }

  private readRevisions(): Revisions {
    if (this.revised.size > 0) this.revisions = revisionsAfter(this.revisions, this.p.revisions, this.revised);
    this.revised.clear();
    return this.revisions;
  }

  /** `forget`: called with each key of the part whose value, or anything in it, has changed. */
  private watch(name: PartName, forget: (key: string) => void): void {
    const part = this.p[name] as Y.AbstractType<unknown>;
    const hear = (events: readonly Y.YEvent<Y.AbstractType<unknown>>[]) => {
      this.stale = true;
      this.fresh.delete(name === "meta" ? "head" : name);
      for (const event of events) for (const key of changedKeys(event, part)) forget(key);
    };
    part.observeDeep(hear);
    this.offs.push(() => part.unobserveDeep(hear));
  }

  private forgetLine(id: string): void {
    this.edits++;
    this.lines.forget(id);
    this.occurrences.forgetAll();
  }

  private forgetSlot(id: string): void {
    this.edits++;
    for (const reads of [this.singles, this.late]) reads.forget(id);
  }

  private forgetChanged(key: string): void {
    const dot = key.indexOf(DOT);
    if (dot <= 0) return;
    this.edits++;
    const id = key.slice(0, dot);
    const keys = this.changed.get(id) ?? new Map<string, unknown>();
    if (this.p.changed.has(key)) keys.set(key.slice(dot + 1), this.p.changed.get(key));
    else keys.delete(key.slice(dot + 1));
    if (keys.size > 0) this.changed.set(id, keys);
    else this.changed.delete(id);
    this.occurrences.forget(id);
  }
}

/** The part's own keys that an event in it concerns. */
function changedKeys(event: Y.YEvent<Y.AbstractType<unknown>>, part: Y.AbstractType<unknown>): Iterable<string> {
  if (event.target === part) return event instanceof Y.YMapEvent ? (event.keysChanged as Set<string>) : [];
  return [String(event.path[0])];
}

const isWithin = ({ slot }: ReadSlot, { from, to }: MonthState["dates"]): boolean =>
  slot.date >= from && slot.date <= to;

/** `was`, where nothing else was added when. */
function madeOf(lines: readonly LineRead[], slots: readonly ReadSlot[], was: ById<number> = {}): ById<number> {
  const all: [string, number][] = [
    ...lines.map(({ line, made }): [string, number] => [line.id, made]),
    ...slots.map(({ slot, made }): [string, number] => [slot.id, made]),
  ];
  const isSame = all.length === Object.keys(was).length && all.every(([id, made]) => own(was, id) === made);
  return isSame ? was : Object.fromEntries(all);
}

function headOf(p: MonthDocParts): Pick<MonthState, "month" | "dates" | "fill" | "given"> {
  const head = flatOf(p.head);
  const fill = readFill(head);
  return { ...datesOfMonthDoc(p), ...(fill ? { fill } : {}), given: String(head.get("given") ?? "").split(" ") };
}

/** The days of the month, fewer where an imported file had fewer. */
export function datesOfMonthDoc({ meta, head }: MonthDocParts): Pick<MonthState, "month" | "dates"> {
  const value = meta.get("month");
  const month = typeof value === "string" && isMonth(value) ? value : "";
  const days = daysOfMonth(month);
  const [from, to] = [head.get("from"), head.get("to")].map((date) => days.find((day) => day === date));
  return { month, dates: { from: from ?? days[0] ?? "2000-01-01", to: to ?? days.at(-1) ?? "2000-01-01" } };
}
