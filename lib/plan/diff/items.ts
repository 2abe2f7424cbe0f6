/** Changes of the items: which came, went and moved, and what is different in those that stayed. */
import { itemName, moveName, springWords } from "../format.ts";
import { sameData } from "../same-data.ts";
import type { MoveItem, Plan, PlanItem, ScriptLine } from "../schema.ts";
import {
  became,
  type FieldWords,
  quote,
  sayData,
  sayList,
  sayNumber,
  sayRange,
  saySeconds,
  sayTag,
  sayText,
  sayYes,
} from "./say.ts";

export function itemChanges(before: Plan, after: Plan): string[] {
  const was = new Map(before.items.map((item) => [item.id, item]));
  const is = new Map(after.items.map((item) => [item.id, item]));
  const removed = before.items.filter((i) => !is.has(i.id)).map((i) => `${capital(itemName(before, i))} was removed.`);
  const moved = movedItems(before, after);
  const inPlace = after.items.flatMap((item, i) => {
    const old = was.get(item.id);
    if (!old) return [`${capital(itemName(after, item))} was added ${placeWords(after, i)}.`];
    const move = moved.has(item.id) ? [`${capital(itemName(after, item))} was moved ${placeWords(after, i)}.`] : [];
    return [...move, ...changesOf(before, after, old, item)];
  });
  return [...removed, ...inPlace];
}

function placeWords(plan: Plan, index: number): string {
  const above = plan.items[index - 1];
  return above ? `after ${itemName(plan, above)}` : "at the start";
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The fewest items whose moving explains the new order: all but the longest run that kept its order. */
function movedItems(before: Plan, after: Plan): Set<string> {
  const place = new Map(before.items.map((item, i) => [item.id, i]));
  const stayed = after.items.flatMap((item) => {
    const old = place.get(item.id);
    return old === undefined ? [] : [{ id: item.id, old }];
  });
  const best: { length: number; previous: number }[] = [];
  stayed.forEach(({ old }, i) => {
    let longest = { length: 1, previous: -1 };
    for (let j = 0; j < i; j++) {
      const length = (best[j]?.length ?? 0) + 1;
      if ((stayed[j]?.old ?? old) < old && length > longest.length) longest = { length, previous: j };
    }
    best.push(longest);
  });
  const moved = new Set(stayed.map((s) => s.id));
  let at = best.reduce((top, b, i) => (b.length > (best[top]?.length ?? 0) ? i : top), best.length - 1);
  for (let entry = best[at]; entry; entry = best[at]) {
    moved.delete(stayed[at]?.id ?? "");
    at = entry.previous;
  }
  return moved;
}

function changesOf(before: Plan, after: Plan, was: PlanItem, is: PlanItem): string[] {
  if (sameData(was, is)) return [];
  const name = capital(itemName(after, is));
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

type Field = Exclude<keyof MoveItem, "id" | "kind" | "move" | "side" | "springs" | "script">;

const FIELDS: Readonly<Record<Field, FieldWords>> = {
  seconds: { label: "", say: saySeconds },
  locked: { label: "locked", say: sayYes, absent: "not said" },
  range: { label: "range", say: sayRange, absent: "the move's own" },
  offsetMm: { label: "offset in mm", say: sayNumber, absent: "none" },
  facing: { label: "facing", say: sayTag, absent: "the move's own" },
  transitionSeconds: { label: "planned transition", say: saySeconds, absent: "the estimate" },
  keep: { label: "kept together as", say: sayText, absent: "nothing" },
  after: { label: "comes after", say: sayList, absent: "nothing" },
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
    ...scriptChanges(name, was.script, is.script),
  ];
}

/** Lines that differ between the common start and the common end, side by side. */
function scriptChanges(name: string, was: MoveItem["script"], is: MoveItem["script"]): string[] {
  if (sameData(was, is)) return [];
  const [old, now] = [was ?? [], is ?? []];
  let start = 0;
  while (start < Math.min(old.length, now.length) && sameData(old[start], now[start])) start++;
  let end = 0;
  const room = Math.min(old.length, now.length) - start;
  while (end < room && sameData(old[old.length - 1 - end], now[now.length - 1 - end])) end++;
  const gone = old.slice(start, old.length - end);
  const come = now.slice(start, now.length - end);
  if (gone.length === 0 && come.length === 0) return [`The script of ${name} is written differently (no lines).`];
  return Array.from({ length: Math.max(gone.length, come.length) }, (_, i) =>
    lineChange(name, gone[i], come[i]),
  ).flat();
}

function lineChange(name: string, was: ScriptLine | undefined, is: ScriptLine | undefined): string[] {
  if (was && is) {
    if (sameData(was, is)) return [];
    if (was.text === is.text) return [`A line of ${name} (${was.kind}) became ${is.kind}: ${quote(is.text)}.`];
    const kind = was.kind === is.kind ? was.kind : `${was.kind}, now ${is.kind}`;
    return [`The words of ${name} (${kind}) changed: ${quote(was.text)} became ${quote(is.text)}.`];
  }
  if (is) return [`A line of ${name} (${is.kind}) was added: ${quote(is.text)}.`];
  return was ? [`A line of ${name} (${was.kind}) was removed: ${quote(was.text)}.`] : [sayData(was)];
}
