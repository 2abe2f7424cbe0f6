/** What a reading leaves open because of words around it that nobody knows. */
import type { Draft } from "./draft.ts";
import { type Reading, readingAt } from "./grammar.ts";
import type { Unit } from "./units.ts";

/** "Whip a light": whether the word before is one that nobody knows, which may be a verb. */
function isAfterUnknown(units: readonly Unit[], at: number, taken: ReadonlySet<number>): boolean {
  if ((units[at]?.gap ?? 1) > 0) return false;
  const isPassed = (unit: Unit | undefined) =>
    unit !== undefined && unit.gap === 0 && (unit.classes.includes("fill") || PARTICLES.has(unit.word));
  let before = at - 1;
  while (before > 0 && isPassed(units[before])) before--;
  const unit = units[before];
  if (unit === undefined || taken.has(before) || NO_VERBS.has(unit.word)) return false;
  return unit.classes.length === 0 || (PARTICLES.has(units[at - 1]?.word ?? "") && before === 0);
}
/** "The middle may leave us": whether the word after is one that nobody knows. */
function isBeforeUnknown(units: readonly Unit[], end: number): boolean {
  let after = end;
  while (units[after]?.gap === 0 && units[after]?.classes.includes("fill")) after++;
  const unit = units[after];
  const isUnknown = unit !== undefined && unit.gap === 0 && unit.classes.length === 0 && !NO_VERBS.has(unit.word);
  return isUnknown && unit.amount === undefined && readingAt(units, after, false) === null;
}
const PARTICLES: ReadonlySet<string> = new Set(["in", "on", "up", "down", "off", "out", "away"]);
const NO_VERBS: ReadonlySet<string> = new Set(
  "and then for with of by from at one's ones one only total altogether finally but because as than means equals round set block".split(
    " ",
  ),
);

/** Springs that are only named, beside a word that may put them on or take them off; "downshift to a light" is all that is on. */
export function unclearOf(
  { drafts, end }: Reading,
  units: readonly Unit[],
  at: number,
  taken: ReadonlySet<number>,
): readonly Draft[] {
  const mayMove = (draft: Draft): boolean =>
    draft.act === "springs" && (draft.way === "now" || (draft.way === "total" && units[at]?.word === "on"));
  if (!drafts.some(mayMove)) return drafts;
  if (!isAfterUnknown(units, at, taken) && !isBeforeUnknown(units, end)) return drafts;
  return drafts.map((draft) =>
    draft.act === "springs" && mayMove(draft) ? ({ ...draft, way: "any" } as Draft) : draft,
  );
}

/** A thing is only named: what is said of it is still to be read. */
const isNaming = ({ act }: Draft): boolean => act === "handles-some" || act === "strap-some";

/** Whether the words are understood: "knees where your feet were" and "company from a wren" are not by what they name. */
export function isUnderstood({ drafts, end }: Reading, units: readonly Unit[], at: number): boolean {
  if (drafts.length > 0) return end > at + 1 || !drafts.every(isNaming);
  return end > at + 1 && !units.slice(at, end).some(({ amount }) => amount);
}
