/** What is different about each plate between two plans: its mark, its sentences, its words, and what was removed beside it. */
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { beginWords, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { itemName, sentenceCase } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Move, MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import type { DiffUnits } from "./field-words.ts";
import { type ItemStory, itemStories } from "./items.ts";
import { kindWords, placeOfLine, type Read, readLines } from "./lines.ts";
import { type OtherLine, otherLines } from "./other-lines.ts";
import { type WordsPart, wordChanges } from "./word-changes.ts";

/** A line of which words, kind or time are different. */
export interface ChangedLine {
  /** "start", or "start, now breath". */
  readonly kind: string;
  readonly parts: readonly WordsPart[];
  /** When it begins now, where only that is different. */
  readonly begins: string | null;
  /** Where it stands now, where only that is different: "after “Breathe out.”". */
  readonly moved: string | null;
}

/** A move as it is set up. */
export interface SetUp {
  readonly item: MoveItem;
  readonly move: Move | undefined;
}

export interface ChangedPlate {
  readonly id: string;
  readonly what: "new" | "changed" | "moved" | "gone";
  readonly name: string;
  /** All that changed but its lines; for one that was removed, that it was. */
  readonly sentences: readonly string[];
  readonly lines: readonly ChangedLine[];
  /** Of one that was removed: the id of the item that followed it and is still there; null at the end. */
  readonly followedBy: string | null;
  /** As it was and as it is, where what a figure shows is different. */
  readonly setUps: { readonly was: SetUp; readonly is: SetUp } | null;
}

/** Changed plates in the order of the class now; one that was removed stands where it was. */
export function changedPlates(before: Plan, after: Plan, f: DiffUnits = STANDARD_FORMATS): ChangedPlate[] {
  const stories = new Map(itemStories(before, after, { words: false, f }).map((story) => [story.id, story]));
  const was = new Map(before.items.map((item) => [item.id, item]));
  const gone = goneByFollower(before.items, new Set(after.items.map(({ id }) => id)));
  const removed = (followedBy: string | null) =>
    (gone.get(followedBy) ?? []).map((item) => goneOrNew(before, item, stories.get(item.id), followedBy));
  const there = (item: PlanItem): ChangedPlate[] => {
    const story = stories.get(item.id);
    const old = was.get(item.id);
    if (!story) return [];
    return old ? stayed(before, after, { old, item, story }) : [goneOrNew(after, item, story, null)];
  };
  return [...after.items.flatMap((item) => [...removed(item.id), ...there(item)]), ...removed(null)];
}

function goneOrNew(plan: Plan, item: PlanItem, story: ItemStory | undefined, followedBy: string | null): ChangedPlate {
  const what = story?.what === "new" ? "new" : "gone";
  const name = sentenceCase(itemName(plan, item));
  return { id: item.id, what, name, sentences: story?.sentences ?? [], lines: [], followedBy, setUps: null };
}

interface Stayed {
  readonly old: PlanItem;
  readonly item: PlanItem;
  readonly story: ItemStory;
}

function stayed(before: Plan, after: Plan, { old, item, story: { moved, sentences } }: Stayed): ChangedPlate[] {
  const lines = changedLines(before, after, old, item);
  // Two ways of writing that there are no lines.
  if (sentences.length === 0 && lines.length === 0) return [];
  const what = moved && sameData(old, item) ? "moved" : "changed";
  const name = sentenceCase(itemName(after, item));
  const setUps = setUpsOf(before, after, old, item);
  return [{ id: item.id, what, name, sentences, lines, followedBy: null, setUps }];
}

/** Items that are not in `is`, by the next item that is; null for those at the end. */
export function goneByFollower(before: readonly PlanItem[], is: ReadonlySet<string>): Map<string | null, PlanItem[]> {
  const found = new Map<string | null, PlanItem[]>();
  let follower: string | null = null;
  for (const item of before.toReversed()) {
    if (is.has(item.id)) follower = item.id;
    else found.set(follower, [item, ...(found.get(follower) ?? [])]);
  }
  return found;
}

function changedLines(before: Plan, after: Plan, was: PlanItem, is: PlanItem): ChangedLine[] {
  if (was.kind !== "move" || is.kind !== "move" || sameData(was.script, is.script)) return [];
  return otherLines(readLines(before, was) ?? [], readLines(after, is) ?? []).map(changedLine);
}

function changedLine(other: OtherLine<Read>): ChangedLine {
  const base = { kind: lineKind(other), begins: null, moved: null };
  switch (other.how) {
    case "added":
      return { ...base, parts: wordChanges("", other.is.read) };
    case "removed":
      return { ...base, parts: wordChanges(other.was.read, "") };
    case "moved":
      return { ...base, parts: wordChanges(other.is.read, other.is.read), moved: placeOfLine(other.after) };
    case "changed": {
      const { was, is } = other;
      const begins = sameData(was.at, is.at) ? null : beginsNow(is);
      return { ...base, parts: wordChanges(was.read, is.read), begins };
    }
  }
}

const lineKind = (other: OtherLine<Read>): string =>
  other.how === "changed" ? kindWords(other.was, other.is) : KIND_WORDS[("is" in other ? other.is : other.was).kind];

const beginsNow = ({ at }: Read): string => (at ? beginWords(at) : "without a time of its own");

function setUpsOf(before: Plan, after: Plan, was: PlanItem, is: PlanItem): ChangedPlate["setUps"] {
  if (was.kind !== "move" || is.kind !== "move") return null;
  const [old, now] = [setUp(before, was), setUp(after, is)];
  return sameData(drawnOf(old), drawnOf(now)) ? null : { was: old, is: now };
}

const setUp = (plan: Plan, item: MoveItem): SetUp => ({ item, move: own(plan.moves, item.move) });

/** What a figure and its springs are drawn from. */
function drawnOf({ item, move }: SetUp) {
  const { springs, side, offsetMm = 0 } = item;
  const { position, station, hands, feet, facing } = move ?? {};
  return { move: item.move, springs, side, offsetMm, position, station, hands, feet, facing: item.facing ?? facing };
}
