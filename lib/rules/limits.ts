/**
 * A rule's limits as form fields: kind, unit, bounds and the rule's own value. All are read off the rule's zod schema, so
 * that a screen never contradicts the check.
 */
import * as z from "zod/mini";
import type { Formats } from "#lib/formats/formats.ts";
import { percent } from "#lib/formats/percent.ts";
import { storedValue, storedWords, typedValue, unitFor } from "#lib/formats/units.ts";
import { listWords, plainNumber, secondsWords, tagWords } from "#lib/plan/format.ts";
import { isStoredUnit, type LimitUnit, limitNameWords, limitUnitOf } from "#lib/plan/limit-names.ts";
import type { AnyRule } from "./define/types.ts";

/** The units a limit is shown and typed in. */
export type LimitUnits = Pick<Formats, "force" | "length">;

interface Named {
  /** The key in `standards`. */
  readonly name: string;
  /** What it means, in words without a full stop. */
  readonly label: string;
}
export interface NumberLimit extends Named {
  readonly kind: "number";
  readonly unit: LimitUnit;
  readonly whole: boolean;
  readonly min: number;
  readonly max: number;
  /** The rule's own value; null where leaving it empty has a meaning of its own, which the label gives. */
  readonly usual: number | null;
}
export interface ChoicesLimit extends Named {
  readonly kind: "choices";
  readonly options: readonly string[];
  readonly usual: readonly string[];
}
interface YesNoLimit extends Named {
  readonly kind: "yes-no";
  readonly usual: boolean;
}
/** Words by choice: `{ kneeling: ["bolster"] }`. */
export interface WordsLimit extends Named {
  readonly kind: "words";
  readonly options: readonly string[];
  readonly usual: Readonly<Record<string, readonly string[]>>;
}
/** A kind of value that no screen can edit yet: shown as it is. */
interface OtherLimit extends Named {
  readonly kind: "other";
  readonly usual: unknown;
}
export type Limit = NumberLimit | ChoicesLimit | YesNoLimit | WordsLimit | OtherLimit;

type Node = Readonly<Record<string, unknown>>;

/** In the rule's own order. */
export function limitsOf(rule: Pick<AnyRule, "limits">): readonly Limit[] {
  const { properties } = z.toJSONSchema(rule.limits, { io: "input" });
  return Object.entries(properties ?? {}).map(([name, node]) => limitOf(name, typeof node === "object" ? node : {}));
}

function limitOf(name: string, node: Node): Limit {
  const label = typeof node.description === "string" ? node.description : limitNameWords(name);
  const named = { name, label };
  const usual = node.default;
  if (node.type === "number" || node.type === "integer") {
    return {
      ...named,
      kind: "number",
      unit: limitUnitOf(name),
      whole: node.type === "integer",
      min: typeof node.minimum === "number" ? node.minimum : Number.NEGATIVE_INFINITY,
      max: typeof node.maximum === "number" ? node.maximum : Number.POSITIVE_INFINITY,
      usual: typeof usual === "number" ? usual : null,
    };
  }
  if (node.type === "boolean") return { ...named, kind: "yes-no", usual: usual === true };
  const options = node.type === "array" ? enumOf(node.items) : null;
  if (options) {
    return { ...named, kind: "choices", options, usual: Array.isArray(usual) ? usual.map(String) : [] };
  }
  const words = node.type === "object" && isWordList(node.additionalProperties) ? enumOf(node.propertyNames) : null;
  if (words) return { ...named, kind: "words", options: words, usual: {} };
  return { ...named, kind: "other", usual };
}

/** Else it is numbers by choice, which no screen can edit yet. */
const isWordList = (node: unknown): boolean =>
  typeof node === "object" && node !== null && "type" in node && node.type === "array";

function enumOf(items: unknown): readonly string[] | null {
  if (typeof items !== "object" || items === null || !("enum" in items) || !Array.isArray(items.enum)) return null;
  return items.enum.map(String);
}

/** A value of the limit to read: "2 s", "25%", "setup and breath", "yes"; "none" for an empty list. */
export function limitWords(limit: Limit, value: unknown, f: LimitUnits): string {
  if (limit.kind === "yes-no") return value === true ? "yes" : "no";
  if (limit.kind === "choices") return choiceWords(limit, value);
  if (limit.kind === "words") return wordsText(value) || "none";
  if (limit.kind === "other") return JSON.stringify(value) ?? "not set";
  return typeof value === "number" ? numberWords(limit, value, f) : "not set";
}

function choiceWords(limit: ChoicesLimit, value: unknown): string {
  const chosen = Array.isArray(value) ? value.map(String) : [];
  if (chosen.length === 0) return "none";
  if (chosen.length === limit.options.length && chosen.length > 4) return `all ${chosen.length}`;
  return listWords(chosen.map(optionWords));
}

/** One option of a list, in words. */
export const optionWords = (option: string): string => (option === "setup" ? "set-up" : tagWords(option));

function numberWords(limit: NumberLimit, value: number, f: LimitUnits): string {
  if (limit.unit === "s") return secondsWords(value);
  if (limit.unit === "%") return percent(value);
  if (isStoredUnit(limit.unit)) return storedWords(value, limit.unit, f);
  return `${plainNumber(value)} ${limit.unit}`.trimEnd();
}

/** The unit that stands behind a limit's field; "" for a plain number. */
export const limitUnit = ({ unit }: NumberLimit, f: LimitUnits): string =>
  isStoredUnit(unit) ? unitFor(unit, f) : unit;

/** What a words limit's field shows: "kneeling: bolster, block; overhead: ceiling". Empty for none. */
export function wordsText(value: unknown): string {
  if (typeof value !== "object" || value === null) return "";
  return Object.entries(value)
    .map(([option, words]) => `${tagWords(option)}: ${Array.isArray(words) ? words.join(", ") : ""}`)
    .join("; ");
}

export type WordsRead =
  | { readonly ok: true; readonly value: Record<string, string[]> }
  | { readonly ok: false; readonly say: string };

/** Reads what `wordsText` shows. An option may be written with spaces, and named twice. */
export function readWordsLimit({ options }: WordsLimit, text: string): WordsRead {
  const value: Record<string, string[]> = {};
  for (const part of text.split(/[;\n]/).filter((one) => one.trim() !== "")) {
    const [name = "", ...rest] = part.split(":");
    const option = name.trim().toLowerCase().replace(/\s+/g, "-");
    const words = rest
      .join(":")
      .split(",")
      .flatMap((word) => word.trim() || []);
    if (!options.includes(option) || words.length === 0) return { ok: false, say: WORDS_WANTED };
    value[option] = [...(value[option] ?? []), ...words];
  }
  return { ok: true, value };
}

const WORDS_WANTED =
  "Write a caution, a colon and its words, and a semicolon before the next: kneeling: bolster, block; overhead: ceiling.";

/** What a number limit's field shows; empty for null. */
export function numberText({ unit }: NumberLimit, value: number | null, f: LimitUnits): string {
  if (value === null) return "";
  if (isStoredUnit(unit)) return String(typedValue(value, unit, f));
  // Twelve digits: 0.29 x 100 is 28.999999999999996.
  return String(unit === "%" ? Number((value * 100).toPrecision(12)) : value);
}

export type LimitRead =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly say: string };

/**
 * Reads what was typed, with a decimal point or comma. Null where the field is empty and the rule allows that. What the field
 * shows of `kept` (the stored value), of the usual value and of the bounds is rounded in some units, and means that very value.
 */
export function readNumberLimit(limit: NumberLimit, text: string, f: LimitUnits, kept?: unknown): LimitRead {
  const plain = text.trim().replace(",", ".");
  if (plain === "") return limit.usual === null ? { ok: true, value: null } : { ok: false, say: wanted(limit, f) };
  const typed = Number(plain);
  const named = [kept, limit.usual, limit.min, limit.max].find(
    (one): one is number => typeof one === "number" && Number(numberText(limit, one, f)) === typed,
  );
  const value = named ?? inStoredUnit(limit, typed, f);
  const fits = Number.isFinite(typed) && value >= limit.min && value <= limit.max;
  return fits && (!limit.whole || Number.isInteger(value)) ? { ok: true, value } : { ok: false, say: wanted(limit, f) };
}

function inStoredUnit({ unit }: NumberLimit, typed: number, f: LimitUnits): number {
  if (isStoredUnit(unit)) return storedValue(typed, unit, f);
  return unit === "%" ? Number((typed / 100).toPrecision(12)) : typed;
}

/** "0 to 120 s" */
export const limitBounds = (limit: NumberLimit, f: LimitUnits): string =>
  `${numberText(limit, limit.min, f)} to ${numberText(limit, limit.max, f)} ${limitUnit(limit, f)}`.trimEnd();

/** "Give a number from 0 to 120 s." */
const wanted = (limit: NumberLimit, f: LimitUnits): string =>
  `Give a ${limit.whole ? "whole number" : "number"} from ${limitBounds(limit, f)}.`;
