/** Puts numbers, springs, sides and items into words, for screens, findings, cue cards and files. */
import { tenth } from "#lib/numbers/round.ts";
import { moveOf, own } from "./lookup.ts";
import type { Equipment, ItemSide, Move, MoveItem, Plan, PlanItem } from "./schema.ts";

/** Whole seconds as m:ss, from an hour on as h:mm:ss; "-0:05" below zero. Rounded to the nearest second. */
export function clockTime(seconds: number): string {
  const whole = Math.round(Math.abs(seconds));
  const s = String(whole % 60).padStart(2, "0");
  const minutes = Math.floor(whole / 60);
  const sign = seconds < 0 && whole > 0 ? "-" : "";
  if (minutes < 60) return `${sign}${minutes}:${s}`;
  return `${sign}${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}:${s}`;
}

/** From here on minutes are named beside the seconds. */
const MINUTES_FROM = 120;

/** A length of time to read: "45 s" up to two minutes, "2 min 30 s" above. "2:30" is written by `clockTime`, without a unit. */
export function secondsWords(seconds: number): string {
  if (Math.abs(seconds) < MINUTES_FROM) return `${plainNumber(seconds)} s`;
  const whole = Math.round(Math.abs(seconds));
  const [minutes, rest] = [Math.floor(whole / 60), whole % 60];
  return `${seconds < 0 ? "-" : ""}${minutes} min${rest === 0 ? "" : ` ${rest} s`}`;
}

/** A range of times: "30 to 60 s", "30 s to 2 min 55 s". One time where both are the same. */
export function secondsRange(low: number, high: number): string {
  if (low === high) return secondsWords(low);
  const inMinutes = Math.max(Math.abs(low), Math.abs(high)) >= MINUTES_FROM;
  return inMinutes ? `${secondsWords(low)} to ${secondsWords(high)}` : `${plainNumber(low)} to ${plainNumber(high)} s`;
}

/** At most one decimal, none for whole numbers: "11.3", "45". */
export const plainNumber = (x: number): string => String(tenth(x));

/** "12 reps", "1 rep"; "about 12 reps" for a number that is not whole. */
export function repsWords(reps: number): string {
  const whole = Math.round(reps);
  return Math.abs(reps - whole) < 0.05 ? plural(whole, "rep") : `about ${plural(whole, "rep")}`;
}

/** What a group does in a move, by its weight as in the balance: 1 prime mover, 0.5 helper. */
export function moverWords(weight: number): string {
  if (weight >= 1) return "prime mover";
  return weight >= 0.5 ? "helper" : "a little";
}

const ENGLISH = new Intl.PluralRules("en-GB");

/** The word that agrees with a number as it is shown: `agree(n, "is", "are")`. 0 and fractions are plural. */
export const agree = (n: number, one: string, many: string): string =>
  ENGLISH.select(Number(plainNumber(n))) === "one" ? one : many;

/** "1 spring", "3 springs". */
export const plural = (n: number, one: string, many = `${one}s`): string => `${plainNumber(n)} ${agree(n, one, many)}`;

/** "springs", "springs and side", "springs, side and strap". */
export function listWords(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** The words with a capital first letter. */
export const sentenceCase = (words: string): string => words.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());

const COUNT_WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
/** "two"; above ten in figures, "11". */
export const countWord = (n: number): string => COUNT_WORDS[n] ?? plainNumber(n);

/** The springs of a set-up by the studio's names and in its order: "two light, one heavy", or "no springs". */
export function springWords(equipment: Equipment, springs: Readonly<Record<string, number>>): string {
  return springParts(equipment, springs).join(", ") || NO_SPRINGS;
}

/** The same as they are said: "two light and one heavy", or "no springs". */
export function spokenSprings(equipment: Equipment, springs: Readonly<Record<string, number>>): string {
  return listWords(springParts(equipment, springs)) || NO_SPRINGS;
}

const NO_SPRINGS = "no springs";

function springParts(equipment: Equipment, springs: Readonly<Record<string, number>>): string[] {
  const known = equipment.springs.map((s) => ({ id: s.id, label: s.label }));
  const strange = Object.keys(springs)
    .filter((id) => !known.some((k) => k.id === id))
    .sort()
    .map((id) => ({ id, label: id }));
  return [...known, ...strange].flatMap(({ id, label }) => {
    const n = own(springs, id) ?? 0;
    return n > 0 ? [`${countWord(n)} ${label}`] : [];
  });
}

/** The studio's name for a spring, or its id where the room has no such spring. */
export function springLabel(equipment: Equipment, id: string): string {
  return equipment.springs.find((s) => s.id === id)?.label ?? id;
}

const SIDE_WORDS: Readonly<Record<ItemSide, string>> = {
  left: "left",
  right: "right",
  both: "both sides",
  alternating: "alternating",
};
export const sideWords = (side: ItemSide): string => SIDE_WORDS[side];

/** A move's name, or its id where the plan does not have the move. */
export const moveName = (plan: Plan, item: MoveItem): string => moveOf(plan, item)?.name ?? item.move;

/** An item's name without side and seconds, for the rail, the panel and the live region, which show those apart. */
export function bareName(plan: Plan, item: PlanItem): string {
  if (item.kind === "heading") return item.title.trim() || "Heading without words";
  if (item.kind === "pause") return item.text?.trim() || "Pause";
  if (item.move === "") return "Move not chosen yet";
  return moveOf(plan, item)?.name ?? `Unknown move “${item.move}”`;
}

/** An item's name in a sentence: "Kneeling row, right", "Plank hold", "the heading Arms", "the pause of 20 s". */
export function itemName(plan: Plan, item: PlanItem): string {
  if (item.kind === "heading") return item.title === "" ? "the heading without words" : `the heading ${item.title}`;
  if (item.kind === "pause") return `the pause of ${secondsWords(item.seconds)}`;
  const name = moveName(plan, item);
  return item.side === "both" ? name : `${name}, ${sideWords(item.side)}`;
}

/** The verb for taking the starting place of a move: "sit", "kneel". */
export function placeVerb({ position }: Move): string {
  switch (position) {
    case "seated":
      return "sit";
    case "kneeling":
    case "quadruped":
      return "kneel";
    case "standing":
      return "stand";
    case "supine":
    case "prone":
    case "side-lying":
      return "lie";
    default:
      return "start";
  }
}

/** An id as words: "raised-blood-pressure" becomes "raised blood pressure". */
export const tagWords = (tag: string): string => tag.replaceAll("-", " ");
