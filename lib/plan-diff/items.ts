/** Changes to the items: which were added, removed and moved, and what is different in those that stayed. */
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { offsetWords } from "#lib/formats/units.ts";
import { itemName, moveName, sentenceCase, springWords } from "#lib/plan/format.ts";
import { movedIds } from "#lib/plan/moved.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { tieOf } from "#lib/plan/ties.ts";
import {
  became,
  type DiffUnits,
  type FieldWords,
  sayMeasure,
  sayRange,
  saySeconds,
  sayTag,
  sayText,
  sayYes,
} from "./field-words.ts";
import { readLines, scriptChanges } from "./lines.ts";

/** One sentence for each change of an item; those of items that were removed come first. */
export const itemChanges = (before: Plan, after: Plan, f: DiffUnits): string[] =>
  itemStories(before, after, { f }).flatMap(({ sentences }) => sentences);

export interface ItemStory {
  readonly id: string;
  readonly what: "gone" | "new" | "there";
  readonly moved: boolean;
  readonly sentences: readonly string[];
}

interface Telling {
  /** Whether changed lines are told too. */
  readonly words?: boolean;
  readonly f?: DiffUnits;
}

/** The same by item, without items that are as they were. */
export function itemStories(
  before: Plan,
  after: Plan,
  { words = true, f = STANDARD_FORMATS }: Telling = {},
): ItemStory[] {
  const was = new Map(before.items.map((item) => [item.id, item]));
  const is = new Set(after.items.map((item) => item.id));
  const gone = before.items.filter((item) => !is.has(item.id)).map((item) => goneStory(before, item));
  const moved = movedIds([...was.keys()], [...is]);
  const inPlace = after.items.map((item, i): ItemStory => {
    const { id } = item;
    const old = was.get(id);
    const name = sentenceCase(itemName(after, item));
    if (!old) return { id, what: "new", moved: false, sentences: [`${name} was added ${placeWords(after, i)}.`] };
    const move = moved.has(id) ? [`${name} was moved ${placeWords(after, i)}.`] : [];
    const changes = changesOf(before, after, { was: old, is: item, words, f });
    return { id, what: "there", moved: moved.has(id), sentences: [...move, ...changes] };
  });
  return [...gone, ...inPlace.filter(({ sentences, id }) => sentences.length > 0 || !sameLines(before, after, id))];
}

const goneStory = (before: Plan, item: PlanItem): ItemStory => ({
  ...{ id: item.id, what: "gone", moved: false },
  sentences: [`${sentenceCase(itemName(before, item))} was removed.`],
});

function sameLines(before: Plan, after: Plan, id: string): boolean {
  const [was, is] = [before, after].map(({ items }) => items.find((item) => item.id === id));
  return was?.kind !== "move" || is?.kind !== "move" || sameData(was.script, is.script);
}

function placeWords(plan: Plan, index: number): string {
  const above = plan.items[index - 1];
  return above ? `after ${itemName(plan, above)}` : "at the start";
}

interface Changing extends Required<Telling> {
  readonly was: PlanItem;
  readonly is: PlanItem;
}

function changesOf(before: Plan, after: Plan, { was, is, words, f }: Changing): string[] {
  if (sameData(was, is)) return [];
  const name = sentenceCase(itemName(after, is));
  if (was.kind === "move" && is.kind === "move") {
    const lines = words ? scriptChanges(itemName(after, is), readLines(before, was), readLines(after, is)) : [];
    return [...moveItemChanges(before, after, { was, is, f }), ...lines];
  }
  if (was.kind === "heading" && is.kind === "heading")
    return became("A heading", was.title, is.title, { say: sayText });
  if (was.kind === "pause" && is.kind === "pause") {
    const seconds = became("A pause", was.seconds, is.seconds, { say: saySeconds });
    return [
      ...seconds,
      ...became(`The words of ${itemName(after, is)}`, was.text, is.text, { say: sayText, absent: "none" }),
    ];
  }
  return [`${name} was ${itemName(before, was)} before.`];
}

type Field = Exclude<keyof MoveItem, "id" | "kind" | "move" | "side" | "springs" | "keep" | "after" | "script">;

const fieldsFor = (f: DiffUnits): Readonly<Record<Field, FieldWords>> => ({
  seconds: { label: "", say: saySeconds },
  locked: { label: "locked", say: sayYes, absent: "not set" },
  range: { label: "range", say: sayRange, absent: "the move's own" },
  offsetMm: { label: "starting place", say: sayMeasure((mm) => placeFrom(mm, f)), absent: USUAL_PLACE },
  facing: { label: "facing", say: sayTag, absent: "the move's own" },
  transitionSeconds: { label: "planned change", say: saySeconds, absent: "not planned" },
});

const USUAL_PLACE = "the usual place";
const placeFrom = (mm: number, f: DiffUnits): string => (mm === 0 ? USUAL_PLACE : offsetWords(mm, f));

interface MoveChanging {
  readonly was: MoveItem;
  readonly is: MoveItem;
  readonly f: DiffUnits;
}

function moveItemChanges(before: Plan, after: Plan, { was, is, f }: MoveChanging): string[] {
  const all = fieldsFor(f);
  const name = itemName(after, is);
  const on = (label: string): string => (label === "" ? name : `${name}, ${label}`);
  const fields = (Object.keys(all) as Field[]).flatMap((key) => {
    const field = all[key];
    return became(on(field.label), was[key], is[key], field);
  });
  const say = (plan: Plan) => ({
    move: became(on("move"), was.move, is.move, {
      say: (id) => (id === was.move ? moveName(before, was) : moveName(plan, is)),
    }),
    springs: became(on("springs"), was.springs, is.springs, {
      say: (springs) => springWords(plan.equipment, sameData(springs, was.springs) ? was.springs : is.springs),
    }),
  });
  const { move, springs } = say(after);
  return [
    ...move,
    ...became(on("side"), was.side, is.side, { say: sayTag }),
    ...fields,
    ...springs,
    ...placeChanges(before, after, was, is),
  ];
}

/** What holds an item in its place, with the names of the other items, since their ids mean nothing to people. */
function placeChanges(before: Plan, after: Plan, was: MoveItem, is: MoveItem): string[] {
  const name = sentenceCase(itemName(after, is));
  const nameOf = (id: unknown): string => {
    const item = after.items.find((i) => i.id === id) ?? before.items.find((i) => i.id === id);
    return item ? itemName(after, item) : String(id);
  };
  const together = (tie: unknown): string => {
    const [plan, item] = tie === was.keep ? [before, was] : [after, is];
    const others = tieOf(plan, item).filter((i) => i.id !== item.id);
    return others.length > 0 ? others.map((i) => itemName(plan, i)).join(" and ") : "nothing else";
  };
  return [
    ...became(`${name}, stays next to`, was.keep, is.keep, { say: together }),
    ...became(`${name}, comes after`, was.after, is.after, {
      say: (ids) => (Array.isArray(ids) && ids.length > 0 ? ids.map(nameOf).join(" and ") : "none"),
    }),
  ];
}
