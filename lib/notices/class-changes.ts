/**
 * When a coach is told that a class of theirs was changed. What people were told last is kept and compared with what stands now, so that
 * a restart loses nothing, typing costs nothing, and a change that is taken back before anybody was told is never told. Pure.
 */
import { CLASS_HOLD_MS, isHeld } from "./class-hold.ts";

/** What people plan by. */
export interface ClassFacts {
  /** 'YYYY-MM-DD' and 'HH:MM' of the studio's wall clock. */
  readonly date: string;
  readonly start: string;
  readonly minutes: number;
  readonly room: string | null;
  readonly coach: string | null;
  /** Called off. */
  readonly out: boolean;
}

interface ToldClass {
  /** As its coach was told, or as it stood when it came near; null for one that nobody was told of yet. */
  readonly told: ClassFacts | null;
  /** When somebody was told, ms since the epoch; 0 for never. */
  readonly at: number;
  /** Who has changed it since, the last one last. */
  readonly by: readonly string[];
}

/** The classes near enough to be told of, by month and id: "2026-11/monday-early-20261102". */
export interface ToldClasses {
  /** The last day that was looked at: a class that was near by then and is not here was added, or moved near, since. "" at first. */
  readonly until: string;
  readonly classes: Readonly<Record<string, ToldClass>>;
}

export const NO_CLASSES: ToldClasses = { until: "", classes: {} };

export interface ClassChange {
  readonly key: string;
  readonly is: ClassFacts;
  /** It lies further ahead, and whoever is told had it signed or is given it. */
  readonly ahead: boolean;
  readonly to: readonly ToldCoach[];
}

/** Whom to tell, and of what. */
interface ToldCoach {
  readonly userId: string;
  /** The last other person that changed it, null when that is not known. */
  readonly byId: string | null;
  /** The class before, but for what its reader changed in it: that is no news to them. */
  readonly was: ClassFacts | null;
}

export interface ClassesNow {
  /** ms since the epoch. */
  readonly now: number;
  /** The last day that is near. */
  readonly until: string;
  /** Every class of the months that could be read, by key. */
  readonly present: ReadonlyMap<string, ClassFacts>;
  /** Whether the month of a class could be read: one that could not has lost no class. */
  readonly wasRead: (key: string) => boolean;
  /** When a class begins, ms since the epoch. */
  readonly beginOf: (facts: ClassFacts) => number;
  /** Who has written since the last look. */
  readonly by: readonly string[];
  /** Who set a value of a class that stands; undefined when that cannot be told. */
  readonly authorOf: (key: string, part: ClassPart) => string | undefined;
  /** The classes of those months that were signed, as they were then, by key. */
  readonly signed: ReadonlyMap<string, ClassFacts>;
}

export type ClassPart = keyof ClassFacts;

/** One look: who has to be told of what, and what is to be kept. */
export function lookAtClasses(
  was: ToldClasses,
  look: ClassesNow,
): { told: ToldClasses; changes: readonly ClassChange[] } {
  const classes: Record<string, ToldClass> = {};
  const changes: ClassChange[] = [];
  for (const key of new Set([...Object.keys(was.classes), ...look.present.keys(), ...look.signed.keys()])) {
    const known = was.classes[key];
    if (known && !look.wasRead(key)) classes[key] = known;
    else {
      const next = nextOf(key, known, was.until, look);
      if (next?.change) changes.push(next.change);
      if (next) classes[key] = next.kept;
    }
  }
  const until = [was.until, look.until].sort().at(-1) ?? look.until;
  return { told: { until, classes }, changes };
}

interface Next {
  readonly kept: ToldClass;
  readonly change?: ClassChange;
}

/** Undefined for a class that is not near, or not any more. */
function nextOf(key: string, known: ToldClass | undefined, until: string, look: ClassesNow): Next | undefined {
  // One that is gone altogether is called off.
  const is = look.present.get(key) ?? gone(known?.told ?? look.signed.get(key));
  if (!is) return undefined;
  const isOver = (facts: ClassFacts) => look.beginOf(facts) <= look.now;
  const near = (facts: ClassFacts | null | undefined) => facts && facts.date <= look.until && !isOver(facts);
  if (!near(is) && !near(known?.told)) return isOver(is) ? undefined : nextAhead(key, { known, is, until }, look);
  // Time alone has brought it near.
  if (!known && (until === "" || is.date > until)) return { kept: { told: is, at: 0, by: [] } };
  const { told, at, by } = known ?? { told: null, at: 0, by: [] };
  if ((told && sameFacts(told, is)) || (!told && is.out)) return { kept: { told: is, at, by: [] } };
  const writers = [...by.filter((id) => !look.by.includes(id)), ...look.by];
  const begins = [is, ...(told ? [told] : [])].map(look.beginOf);
  if (isHeld(told, is, { now: look.now, toldAt: at, begins })) return { kept: { told, at, by: writers } };
  const to = toTell(key, told, is, { ...look, by: writers });
  if (to.length === 0) return { kept: { told: is, at, by: [] } };
  return { kept: { told: is, at: look.now, by: [] }, change: { key, is, ahead: false, to } };
}

const gone = (facts: ClassFacts | undefined): ClassFacts | undefined => facts && { ...facts, out: true };

/**
 * Of a class that is not near only who leads it and whether it takes place counts, and only in a month that was signed: coaches rely on
 * that. Its other changes are told when it is near, so they are taken for told here.
 */
function nextAhead(
  key: string,
  { known, is, until }: { readonly known: ToldClass | undefined; readonly is: ClassFacts; readonly until: string },
  look: ClassesNow,
): Next | undefined {
  const signed = look.signed.get(key);
  if (!signed) return undefined;
  if (until === "") return { kept: { told: is, at: 0, by: [] } };
  const { told, at, by } = known ?? { told: signed, at: 0, by: [] };
  const before = { ...is, coach: (told ?? signed).coach, out: (told ?? signed).out };
  if (sameFacts(before, is)) {
    const asSigned = is.coach === signed.coach && is.out === signed.out;
    return asSigned && look.now - at >= CLASS_HOLD_MS ? undefined : { kept: { told: is, at, by: [] } };
  }
  const writers = [...by.filter((id) => !look.by.includes(id)), ...look.by];
  if (look.now - at < CLASS_HOLD_MS) return { kept: { told: before, at, by: writers } };
  const to = toTell(key, before, is, { ...look, by: writers });
  return {
    kept: { told: is, at: to.length === 0 ? at : look.now, by: [] },
    ...(to.length === 0 ? {} : { change: { key, is, ahead: true, to } }),
  };
}

const PARTS: readonly ClassPart[] = ["date", "start", "minutes", "room", "coach", "out"];

/** Its coach and, where that changed, the former one; nobody of what they set themselves. */
function toTell(
  key: string,
  was: ClassFacts | null,
  is: ClassFacts,
  { by, authorOf }: Pick<ClassesNow, "by" | "authorOf">,
): ToldCoach[] {
  const coaches = new Set([was?.coach, is.coach].filter((id) => typeof id === "string"));
  const changed = was ? PARTS.filter((part) => was[part] !== is[part]) : (["coach"] as const);
  return [...coaches].flatMap((userId) => {
    const others = by.filter((id) => id !== userId);
    const onlyMine = by.length > 0 && others.length === 0;
    const isMine = (part: ClassPart): boolean => {
      const author = authorOf(key, part);
      return author === undefined ? onlyMine : author === userId;
    };
    const news = changed.filter((part) => !isMine(part));
    if (news.length === 0) return [];
    const authors = new Set(news.map((part) => authorOf(key, part)));
    const byId = others.findLast((id) => authors.has(id)) ?? [...authors].find((id) => id) ?? others.at(-1) ?? null;
    return [{ userId, byId, was: was && { ...is, ...pick(was, news) } }];
  });
}

const pick = (facts: ClassFacts, parts: readonly ClassPart[]): Partial<ClassFacts> =>
  Object.fromEntries(parts.map((part) => [part, facts[part]]));

const sameFacts = (a: ClassFacts, b: ClassFacts): boolean =>
  a.date === b.date &&
  a.start === b.start &&
  a.minutes === b.minutes &&
  a.room === b.room &&
  a.coach === b.coach &&
  a.out === b.out;
