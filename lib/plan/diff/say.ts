/** The words of a change: one sentence a difference, and never none. */
import { plainNumber, secondsWords } from "../format.ts";
import { sameData } from "../same-data.ts";

export type Words = (value: unknown) => string;

/** A field that may have changed: what it is called, how its value is said, and what is said when it is left out. */
export interface FieldWords {
  readonly label: string;
  readonly say: Words;
  readonly absent?: string;
}

/** "Kneeling row, right: 45 s became 60 s." Nothing when the two are the same data. */
export function became(label: string, before: unknown, after: unknown, field: Omit<FieldWords, "label">): string[] {
  if (sameData(before, after)) return [];
  const say = (value: unknown): string => (value === undefined ? (field.absent ?? "nothing") : field.say(value));
  const [from, to] = [say(before), say(after)];
  // Two ways to write one thing ("no springs" as none or as zero of each) are still a change of the file.
  return [from === to ? `${label} is written differently (${to}).` : `${label}: ${from} became ${to}.`];
}

export const saySeconds: Words = (v) => (typeof v === "number" ? secondsWords(v) : sayData(v));
export const sayNumber: Words = (v) => (typeof v === "number" ? plainNumber(v) : sayData(v));
export const sayText: Words = (v) => (typeof v === "string" ? quote(v) : sayData(v));
export const sayRange: Words = (v) => (Array.isArray(v) ? v.map(saySeconds).join(" to ") : sayData(v));
export const sayYes: Words = (v) => (v === true ? "yes" : "no");
export const sayList: Words = (v) => (Array.isArray(v) && v.length > 0 ? v.map(String).join(", ") : "none");
export const sayTag: Words = (v) => String(v).replaceAll("-", " ");
/** Anything at all, shortly. */
export const sayData: Words = (v) => shorten(JSON.stringify(v) ?? String(v));

export const quote = (text: string): string => `“${shorten(text)}”`;

const shorten = (text: string): string => {
  const chars = [...text];
  return chars.length > 160 ? `${chars.slice(0, 159).join("")}…` : text;
};

/** All keys of both, those of the first in their order. */
export const keysOfBoth = (a: object | undefined, b: object | undefined): string[] => [
  ...new Set([...Object.keys(a ?? {}), ...Object.keys(b ?? {})]),
];
