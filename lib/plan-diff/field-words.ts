/** Differences as sentences, at least one for each change. */
import type { Formats } from "#lib/formats/formats.ts";
import { plainNumber, secondsWords } from "#lib/plan/format.ts";
import { sameData } from "#lib/plan/same-data.ts";

/** The units of whoever reads the sentences. */
export type DiffUnits = Pick<Formats, "force" | "length">;

export type ValueSayer = (value: unknown) => string;

/** A field that may have changed: its name, how to word its value, and what to say when it is left out. */
export interface FieldWords {
  readonly label: string;
  readonly say: ValueSayer;
  readonly absent?: string;
}

/** "Kneeling row, right: 45 s became 60 s." Empty when the two are equal. */
export function became(label: string, before: unknown, after: unknown, field: Omit<FieldWords, "label">): string[] {
  if (sameData(before, after)) return [];
  const say = (value: unknown): string => (value === undefined ? (field.absent ?? "nothing") : field.say(value));
  const [from, to] = [say(before), say(after)];
  // Two spellings of the same thing ("no springs" as none or as zero of each) are still a change of the file.
  return [from === to ? `${label} is written differently (${to}).` : `${label}: ${from} became ${to}.`];
}

export const saySeconds: ValueSayer = (v) => (typeof v === "number" ? secondsWords(v) : sayData(v));
export const sayNumber: ValueSayer = (v) => (typeof v === "number" ? plainNumber(v) : sayData(v));
export const sayMeasure =
  (words: (value: number) => string): ValueSayer =>
  (v) =>
    typeof v === "number" ? words(v) : sayData(v);
export const sayText: ValueSayer = (v) => (typeof v === "string" ? quote(v) : sayData(v));
export const sayRange: ValueSayer = (v) => (Array.isArray(v) ? v.map(saySeconds).join(" to ") : sayData(v));
export const sayYes: ValueSayer = (v) => (v === true ? "yes" : "no");
export const sayList: ValueSayer = (v) => (Array.isArray(v) && v.length > 0 ? v.map(String).join(", ") : "none");
export const sayTag: ValueSayer = (v) => String(v).replaceAll("-", " ");
/** Any value, shortened. */
export const sayData: ValueSayer = (v) => shorten(JSON.stringify(v) ?? String(v));

export const quote = (text: string): string => `“${shorten(text)}”`;

const shorten = (text: string): string => {
  const chars = [...text];
  return chars.length > 160 ? `${chars.slice(0, 159).join("")}…` : text;
};

/** The keys of both, those of the first one first. */
export const keysOfBoth = (a: object | undefined, b: object | undefined): string[] => [
  ...new Set([...Object.keys(a ?? {}), ...Object.keys(b ?? {})]),
];
