/** All that is worked out from a month. Keeps what did not change, so that it can be asked again after every change. */
import { Kept, KeptEach, type Reads } from "#lib/memo/kept.ts";
import { own } from "#lib/plan/lookup.ts";
import type { MonthParts, PartKind } from "../define/parts.ts";
import type { SumsFrame } from "../sums/regulars.ts";
import type { MonthClass, MonthSums, TimedSlot } from "../sums-types.ts";
import type { ById, MonthFile, MonthFinding } from "../types.ts";
import { ClassReader, type MonthClasses } from "./classes.ts";
import { byWeight, foundIn, type Judging, judgingOf, type PlacedFinding, placedFinding, toldFrom } from "./judge.ts";
import { classesBy, coachPartOf, frameOf, regularsPartOf, roomPartOf, slotPartOf, themePartOf } from "./parts-of.ts";

export interface MonthLook {
  /** Every slot of known..to, by start, then id; also those taken out. */
  readonly slots: readonly TimedSlot[];
  readonly sums: MonthSums;
  /** By level, then start of the first slot, then id. */
  readonly findings: readonly MonthFinding[];
}

/** A part with what its rules found. */
interface Judged<Of extends PartKind> {
  readonly part: MonthParts[Of];
  readonly findings: readonly PlacedFinding[];
}
interface Context {
  readonly month: MonthFile;
  readonly judging: Judging;
  readonly frame: SumsFrame;
}

/**
 * Give it one month after another. What is the same object as before (a slot, a line of the pattern, a plan, an entry of
 * rooms, coaches, regulars, themes) is taken as unchanged and its results are reused; nothing of a month may change in place.
 */
export class MonthAnalyst {
  private readonly reader = new ClassReader();
  private readonly judging = new Kept<Judging>();
  private readonly frame = new Kept<SumsFrame>();
  private readonly slots = new KeptEach<Judged<"slot">>();
  private readonly rooms = new KeptEach<Judged<"room">>();
  private readonly coaches = new KeptEach<Judged<"coach">>();
  private readonly regulars = new KeptEach<Judged<"regulars">>();
  private readonly themes = new KeptEach<Judged<"theme">>();

  look(month: MonthFile): MonthLook {
    const read = this.reader.read(month);
    const context = this.contextOf(month, read);
    const { classes } = read;
    const slots = this.ofSlots(context, classes);
    const rooms = this.ofRooms(context, classes);
    const coaches = this.ofCoaches(context, classes);
    const regulars = this.ofRegulars(context, classes);
    const themes = this.ofThemes(context, classes);
    const parts = [...slots, ...rooms.values(), ...coaches.values(), ...regulars.values(), ...themes.values()];
    return {
      slots: read.slots,
      sums: {
        slots: read.slots,
        regulars: sumsOf(regulars),
        coaches: sumsOf(coaches),
        themes: sumsOf(themes),
      },
      findings: told(month, parts),
    };
  }

  private contextOf(month: MonthFile, { weeks }: MonthClasses): Context {
    const judging = this.judging.get([month.limits, month.standards], () => judgingOf(month));
    const { from, to } = month.dates;
    const frame = this.frame.get([from, to, weeks, judging], () => frameOf(month.dates, weeks, judging.limits));
    return { month, judging, frame };
  }

  private ofSlots({ month, judging }: Context, classes: readonly MonthClass[]): Judged<"slot">[] {
    this.slots.round();
    return classes.map((one) => {
      const part = slotPartOf(month, one);
      const { room, coach, theme, regulars, planUnknown, holiday } = part;
      const reads = [judging, one, room, coach, theme, planUnknown, holiday, ...regulars];
      return this.slots.get(one.id, reads, () => judge("slot", part, judging));
    });
  }

  private ofRooms({ month, judging }: Context, classes: readonly MonthClass[]): Map<string, Judged<"room">> {
    const by = classesBy(classes, ({ room }) => [room]);
    return ofEach(this.rooms, month.rooms, by, [judging], (id, room, own) =>
      judge("room", roomPartOf(id, room, own), judging),
    );
  }

  private ofCoaches({ month, judging, frame }: Context, classes: readonly MonthClass[]): Map<string, Judged<"coach">> {
    const by = classesBy(classes, ({ coach }) => [coach]);
    return ofEach(this.coaches, month.coaches, by, [judging, frame], (id, coach, own) =>
      judge("coach", coachPartOf(id, coach, { classes: own, frame }), judging),
    );
  }

  private ofRegulars({ month, judging, frame }: Context, classes: readonly MonthClass[]) {
    const by = classesBy(classes, ({ regulars }) => regulars ?? []);
    return ofEach(this.regulars, month.regulars, by, [judging, frame], (id, regulars, own) =>
      judge("regulars", regularsPartOf(id, regulars, { classes: own, frame }), judging),
    );
  }

  private ofThemes({ month, judging, frame }: Context, classes: readonly MonthClass[]): Map<string, Judged<"theme">> {
    const by = classesBy(classes, ({ theme }) => [theme]);
    return ofEach(this.themes, month.themes ?? {}, by, [judging, frame], (id, theme, own) =>
      judge("theme", themePartOf(id, theme, { classes: own, frame }), judging),
    );
  }
}

/** Asks again for each entry whose own data, classes or `reads` have changed. */
function ofEach<E, J>(
  kept: KeptEach<J>,
  entries: ById<E>,
  by: ReadonlyMap<string, readonly MonthClass[]>,
  reads: Reads,
  make: (id: string, entry: E, classes: readonly MonthClass[]) => J,
): Map<string, J> {
  kept.round();
  return new Map(
    Object.keys(entries).map((id) => {
      const [entry, classes] = [own(entries, id) as E, by.get(id) ?? []];
      return [id, kept.get(id, [...reads, entry, ...classes], () => make(id, entry, classes))];
    }),
  );
}

function judge<Of extends PartKind>(of: Of, part: MonthParts[Of], judging: Judging): Judged<Of> {
  const findings = foundIn(of, part, judging).map((found) => placedFinding(found, part, judging.limits));
  return { part, findings };
}

function told(month: MonthFile, parts: readonly { readonly findings: readonly PlacedFinding[] }[]): MonthFinding[] {
  const since = toldFrom(month);
  return parts
    .flatMap(({ findings }) => findings)
    .filter(({ date }) => date === undefined || date >= since)
    .sort(byWeight)
    .map(({ finding }) => finding);
}

const sumsOf = <S>(judged: ReadonlyMap<string, { readonly part: { readonly sums: S } }>): Record<string, S> =>
  Object.fromEntries([...judged].map(([id, { part }]) => [id, part.sums]));

/** The sums of a month that nobody has looked at before. */
export const monthSums = (month: MonthFile): MonthSums => new MonthAnalyst().look(month).sums;

/** What the rules find in it, by level, then start of the first slot, then id. */
export const monthFindings = (month: MonthFile): readonly MonthFinding[] => new MonthAnalyst().look(month).findings;
