/** Many classes that one person changed for another at once, as one notice. Pure. */
import { plural } from "#lib/plan/format.ts";
import type { ClassFacts } from "./class-changes.ts";
import { type ChangedClass, type ClassNames, changedClassSentence, whenWords } from "./class-words.ts";

/** So many are told one by one; more are told together. Our own choice. */
export const MOST_SINGLY = 3;
/** What one person does within this time of the last notice of it is one burst. Our own choice. */
export const BURST_MS = 60_000;
/** So many of a bundle are listed; the rest is counted. */
const MOST_LISTED = 50;

type Deed = "given" | "taken" | "off" | "changed";

/** What became of it for its reader. */
export function deedOf({ was, is }: Pick<ChangedClass, "was" | "is">, readerId: string): Deed {
  if (is.out) return "off";
  if (is.coach === readerId) return was?.coach === readerId ? "changed" : "given";
  return was?.coach === readerId ? "taken" : "changed";
}

/** By time; of one that was changed again only the last. */
export function bundled(classes: readonly ChangedClass[]): ChangedClass[] {
  const last = new Map<string, ChangedClass>();
  for (const one of classes) {
    const key = `${one.month}/${one.slot}`;
    const before = last.get(key);
    last.set(key, before ? { ...one, was: before.was } : one);
  }
  return [...last.values()].sort((a, b) => (timeOf(shownAt(a)) < timeOf(shownAt(b)) ? -1 : 1));
}

const timeOf = ({ date, start }: ClassFacts): string => date + start;

/** Where its reader looks for it: one that is theirs no more stood where it was. */
const shownAt = ({ was, is }: ChangedClass): ClassFacts => (is.out && was ? was : is);

const WORDS: Readonly<Record<Deed, (who: string, classes: string) => string>> = {
  given: (who, classes) => `${who} gave you ${classes}`,
  taken: (who, classes) => `${who} took ${classes} from you`,
  off: (who, classes) => `${who} called off ${classes} of yours`,
  changed: (who, classes) => `${who} changed ${classes} of yours`,
};

/** "Marta gave you 12 classes: the first on Friday 20 November, at 07:00." */
export function bundleSentence(who: string, classes: readonly ChangedClass[], names: ClassNames): string {
  const [first] = classes;
  const words = WORDS[first ? deedOf(first, names.readerId) : "changed"](
    who,
    plural(classes.length, "class", "classes"),
  );
  return first ? `${words}: the first on ${whenWords(shownAt(first), names.formats)}.` : `${words}.`;
}

export interface BundleLine {
  readonly sentence: string;
  readonly path: string;
}

/** The path of a class in its month. */
export const classPath = ({ month, slot }: Pick<ChangedClass, "month" | "slot">): string =>
  `/programme/${encodeURIComponent(month)}#class=${encodeURIComponent(slot)}`;

/** A sentence for each of them, as if it had been told alone. */
export function bundleLines(who: string, classes: readonly ChangedClass[], names: ClassNames): BundleLine[] {
  const more = classes.length - MOST_LISTED;
  return [
    ...classes
      .slice(0, MOST_LISTED)
      .map((one) => ({ sentence: changedClassSentence(who, one, names), path: classPath(one) })),
    ...classes
      .slice(MOST_LISTED, MOST_LISTED + 1)
      .map((next) => ({ sentence: `And ${more} more.`, path: classPath(next) })),
  ];
}
