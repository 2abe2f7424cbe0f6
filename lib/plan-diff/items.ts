/** Changes to the items: which were added, removed and moved, and what is different in those that stayed. */
import { readerOf } from "#lib/cues/as-read.ts";
import { beginWords, KIND_WORDS } from "#lib/plan/cue-words.ts";
import { itemName, moveName, sentenceCase, springWords } from "#lib/plan/format.ts";
import { movedIds } from "#lib/plan/moved.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { LineBegin, MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { tieOf } from "#lib/plan/ties.ts";
import {
  became,
  type FieldWords,
  quote,
  sayNumber,
  sayRange,
  saySeconds,
  sayTag,
  sayText,
  sayYes,
} from "./field-words.ts";

export function itemChanges(before: Plan, after: Plan): string[] {
  const was = new Map(before.items.map((item) => [item.id, item]));
  const is = new Map(after.items.map((item) => [item.id, item]));
  const removed = before.items
    .filter((i) => !is.has(i.id))
    .map((i) => `${sentenceCase(itemName(before, i))} was removed.`);
  const moved = movedIds(
    before.items.map((item) => item.id),
    after.items.map((item) => item.id),
  );
  const inPlace = after.items.flatMap((item, i) => {
    const old = was.get(item.id);
    if (!old) return [`${sentenceCase(itemName(after, item))} was added ${placeWords(after, i)}.`];
    const move = moved.has(item.id)
      ? [`${sentenceCase(itemName(after, item))} was moved ${placeWords(after, i)}.`]
      : [];
    return [...move, ...changesOf(before, after, old, item)];
  });
  return [...removed, ...inPlace];
}

function placeWords(plan: Plan, index: number): string {
  const above = plan.items[index - 1];
  return above ? `after ${itemName(plan, above)}` : "at the start";
}

function changesOf(before: Plan, after: Plan, was: PlanItem, is: PlanItem): string[] {
  if (sameData(was, is)) return [];
  const name = sentenceCase(itemName(after, is));
  if (was.kind === "move" && is.kind === "move") return moveItemChanges(before, after, was, is);
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

const FIELDS: Readonly<Record<Field, FieldWords>> = {
  seconds: { label: "", say: saySeconds },
  locked: { label: "locked", say: sayYes, absent: "not set" },
  range: { label: "range", say: sayRange, absent: "the move's own" },
  offsetMm: { label: "offset in mm", say: sayNumber, absent: "none" },
  facing: { label: "facing", say: sayTag, absent: "the move's own" },
  transitionSeconds: { label: "planned change", say: saySeconds, absent: "not planned" },
};

function moveItemChanges(before: Plan, after: Plan, was: MoveItem, is: MoveItem): string[] {
  const name = itemName(after, is);
  const on = (label: string): string => (label === "" ? name : `${name}, ${label}`);
  const fields = (Object.keys(FIELDS) as Field[]).flatMap((key) => {
    const field = FIELDS[key];
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
    ...scriptChanges(name, readLines(before, was), readLines(after, is)),
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

/** A line with its words as people read them. Two lines are the same only if they are written the same. */
interface Read extends ScriptLine {
  readonly read: string;
}

function readLines(plan: Plan, item: MoveItem): Read[] | undefined {
  const asRead = readerOf(plan);
  return item.script?.map((line) => ({ ...line, read: asRead(item, line.text) }));
}

const written = (lines: readonly Read[] | undefined): readonly ScriptLine[] | undefined =>
  lines?.map(({ read: _read, ...line }) => line);
const isSame = (a: Read | undefined, b: Read | undefined): boolean =>
  a?.kind === b?.kind && a?.text === b?.text && sameData(a?.at, b?.at);

/** The lines between the common start and the common end, side by side. */
function scriptChanges(name: string, was: Read[] | undefined, is: Read[] | undefined): string[] {
  if (sameData(written(was), written(is))) return [];
  const [old, now] = [was ?? [], is ?? []];
  let start = 0;
  while (start < Math.min(old.length, now.length) && isSame(old[start], now[start])) start++;
  let end = 0;
  const room = Math.min(old.length, now.length) - start;
  while (end < room && isSame(old[old.length - 1 - end], now[now.length - 1 - end])) end++;
  const gone = old.slice(start, old.length - end);
  const come = now.slice(start, now.length - end);
  if (gone.length === 0 && come.length === 0) return [`The script of ${name} is written differently (no lines).`];
  return Array.from({ length: Math.max(gone.length, come.length) }, (_, i) =>
    lineChange(name, gone[i], come[i]),
  ).flat();
}

function lineChange(name: string, was: Read | undefined, is: Read | undefined): string[] {
  if (was && is) {
    if (isSame(was, is)) return [];
    const kind = kindWords(was, is);
    if (was.text === is.text && was.kind === is.kind)
      return [`A line of ${name} (${kind}) ${atWords(is.at)}: ${quote(is.read)}.`];
    if (was.text === is.text)
      return [`A line of ${name} (${KIND_WORDS[was.kind]}) became ${KIND_WORDS[is.kind]}: ${quote(is.read)}.`];
    if (was.read === is.read)
      return [`A line of ${name} (${kind}) has other live fields and reads the same: ${quote(is.read)}.`];
    return [`The words of ${name} (${kind}) changed: ${quote(was.read)} became ${quote(is.read)}.`];
  }
  if (is) return [`A line of ${name} (${KIND_WORDS[is.kind]}) was added: ${quote(is.read)}.`];
  return was ? [`A line of ${name} (${KIND_WORDS[was.kind]}) was removed: ${quote(was.read)}.`] : [];
}

const atWords = (at: LineBegin | undefined): string =>
  at ? `now begins ${beginWords(at)}` : "no longer has a time of its own";

const kindWords = (was: Read, is: Read): string =>
  was.kind === is.kind ? KIND_WORDS[was.kind] : `${KIND_WORDS[was.kind]}, now ${KIND_WORDS[is.kind]}`;
