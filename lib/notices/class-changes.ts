/**
 * When a coach is told that a class of theirs was changed. What people were told last is kept and compared with what stands now, so that
 * a restart loses nothing, typing costs nothing, and a change that is taken back before anybody was told is never told. Pure.
 */

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

/** At most one notice of a class in this time; later changes within it are told together when it is over. */
export const CLASS_HOLD_MS = 10 * 60_000;

export interface ClassChange {
  readonly key: string;
  readonly was: ClassFacts | null;
  readonly is: ClassFacts;
  /** Whom to tell, and who did it: the last other person that changed it, null when that is not known. */
  readonly to: readonly { readonly userId: string; readonly byId: string | null }[];
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
  readonly isOver: (facts: ClassFacts) => boolean;
  /** Who has written since the last look. */
  readonly by: readonly string[];
}

/** One look: who has to be told of what, and what is to be kept. */
export function lookAtClasses(
  was: ToldClasses,
  look: ClassesNow,
): { told: ToldClasses; changes: readonly ClassChange[] } {
  const classes: Record<string, ToldClass> = {};
  const changes: ClassChange[] = [];
  for (const key of new Set([...Object.keys(was.classes), ...look.present.keys()])) {
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
  const is = look.present.get(key) ?? (known?.told ? { ...known.told, out: true } : undefined);
  if (!is) return undefined;
  const near = (facts: ClassFacts | null | undefined) => facts && facts.date <= look.until && !look.isOver(facts);
  if (!near(is) && !near(known?.told)) return undefined;
  // Time alone has brought it near.
  if (!known && (until === "" || is.date > until)) return { kept: { told: is, at: 0, by: [] } };
  const { told, at, by } = known ?? { told: null, at: 0, by: [] };
  if ((told && sameFacts(told, is)) || (!told && is.out)) return { kept: { told: is, at, by: [] } };
  const writers = [...by.filter((id) => !look.by.includes(id)), ...look.by];
  if (look.now - at < CLASS_HOLD_MS) return { kept: { told, at, by: writers } };
  const change = { key, was: told, is, to: toTell(told, is, writers) };
  if (change.to.length === 0) return { kept: { told: is, at, by: [] } };
  return { kept: { told: is, at: look.now, by: [] }, change };
}

/** Its coach and, where that changed, the former one; not whoever changed it alone. */
function toTell(was: ClassFacts | null, is: ClassFacts, by: readonly string[]): ClassChange["to"] {
  const coaches = new Set([was?.coach, is.coach].filter((id) => typeof id === "string"));
  return [...coaches].flatMap((userId) => {
    const others = by.filter((id) => id !== userId);
    return by.length > 0 && others.length === 0 ? [] : [{ userId, byId: others.at(-1) ?? null }];
  });
}

const sameFacts = (a: ClassFacts, b: ClassFacts): boolean =>
  a.date === b.date &&
  a.start === b.start &&
  a.minutes === b.minutes &&
  a.room === b.room &&
  a.coach === b.coach &&
  a.out === b.out;
