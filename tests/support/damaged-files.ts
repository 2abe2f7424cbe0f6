/** Plan files damaged at random in bytes, text and values. The same seed makes the same files. */
import fc from "fast-check";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { type Harm, VALUE_HARMS } from "./damaged-values.ts";
import { Dice } from "./dice.ts";
import { validPlan } from "./plan-arbitrary.ts";

export interface DamagedFile {
  /** What was done to it. */
  readonly what: string;
  readonly bytes: Uint8Array;
}

/** `count` damaged files. About one in ten is still valid, and must then get an answer. */
export function* damagedFiles(seed: number, count: number): Generator<DamagedFile> {
  const small = fc.sample(validPlan, { seed, numRuns: 60 }).map((plan) => JSON.stringify(plan));
  const real = [FIRST_TRY, UPPER_BODY_AND_TRUNK].map((plan) => JSON.stringify(plan));
  for (let i = 0; i < count; i++) {
    const dice = new Dice(seed + i);
    const base = dice.upTo(6) === 0 ? dice.one(real) : dice.one(small);
    yield damaged(base, dice);
  }
}

function damaged(base: string, dice: Dice): DamagedFile {
  const what: string[] = [];
  let text = base;
  for (let n = dice.upTo(3); n >= 0; n--) {
    const [name, harm] = dice.one(dice.upTo(2) ? VALUE_HARMS : TEXT_HARMS);
    what.push(name);
    text = harm(text, dice);
  }
  const bytes = new TextEncoder().encode(text);
  if (dice.upTo(20) > 0) return { what: what.join(", "), bytes };
  const [name, harm] = dice.one(BYTE_HARMS);
  return { what: [...what, name].join(", "), bytes: harm(bytes, dice) };
}

const BYTE_HARMS: readonly Harm<Uint8Array>[] = [
  ["bytes swapped", (bytes, dice) => swapped(bytes, dice)],
  ["a byte of no meaning", (bytes, dice) => withByte(bytes, dice, 128 + dice.upTo(128))],
  ["a zero byte", (bytes, dice) => withByte(bytes, dice, 0)],
  ["cut inside a letter", (bytes) => new TextEncoder().encode(`${new TextDecoder().decode(bytes)}ü`).slice(0, -1)],
];

function swapped(bytes: Uint8Array, dice: Dice): Uint8Array {
  const copy = bytes.slice();
  for (let n = 1 + dice.upTo(4); n > 0; n--) {
    const [a, b] = [dice.upTo(copy.length), dice.upTo(copy.length)];
    [copy[a], copy[b]] = [copy[b] ?? 0, copy[a] ?? 0];
  }
  return copy;
}

function withByte(bytes: Uint8Array, dice: Dice, byte: number): Uint8Array {
  const copy = bytes.slice();
  copy[dice.upTo(copy.length)] = byte;
  return copy;
}

const WORDS = ["NaN", "Infinity", "-Infinity", "undefined", "0x10", "01", "1.", ".5", "+1", "1e", "'a'", "True", "nil"];
const NUMBERS = ["1e999", "-1e999", "1e308", "9007199254740993", "-0", "1e-400", "0.1e-300", "14400.0000000001"];
const BITS = [
  '"',
  "\\",
  "{",
  "}",
  "[",
  "]",
  ",",
  ":",
  "/*",
  "//",
  "\u0000",
  "\n",
  "\u2028",
  "\ufeff",
  "\\ud800",
  "\\u0000",
];

/** Inserts `piece` somewhere. */
function putIn(text: string, piece: string, dice: Dice): string {
  const at = dice.upTo(text.length + 1);
  return text.slice(0, at) + piece + text.slice(at);
}

/** Puts `piece` in place of a value. */
function asValue(text: string, piece: string, dice: Dice): string {
  const places = [...text.matchAll(/[:[,](-?\d[\d.eE+-]*|true|false|null|"(?:[^"\\]|\\.)*")/g)];
  if (places.length === 0) return text;
  const place = dice.one(places);
  const from = place.index + 1;
  return text.slice(0, from) + piece + text.slice(from + (place[1]?.length ?? 0));
}

const TEXT_HARMS: readonly Harm<string>[] = [
  ["cut short", (text, dice) => text.slice(0, dice.upTo(text.length))],
  ["cut at the front", (text, dice) => text.slice(dice.upTo(text.length))],
  ["a piece gone", (text, dice) => cutOut(text, dice)],
  ["a piece twice", (text, dice) => putIn(text, text.slice(dice.upTo(text.length)).slice(0, 40), dice)],
  ["a stray sign", (text, dice) => putIn(text, dice.one(BITS), dice)],
  ["a word for a value", (text, dice) => asValue(text, dice.one(WORDS), dice)],
  ["a strange number", (text, dice) => asValue(text, dice.one(NUMBERS), dice)],
  ["deep lists", (text, dice) => asValue(text, `${"[".repeat(1 + dice.upTo(3000))}`, dice)],
  ["deep and closed", (text, dice) => deep(text, 1 + dice.upTo(200), dice)],
  ["a key twice", (text, dice) => keyTwice(text, dice)],
  ["__proto__", (text, dice) => afterBrace(text, '"__proto__":{"seconds":1},', dice)],
  ["half a letter", (text, dice) => asValue(text, dice.one(['"\\ud800"', '"\\udc00x"', '"\\ud83d\\u0041"']), dice)],
  ["a very long text", (text, dice) => asValue(text, JSON.stringify("{{ab".repeat(1 + dice.upTo(9000))), dice)],
  ["a very long number", (text, dice) => asValue(text, "9".repeat(1 + dice.upTo(3000)), dice)],
  ["other spaces", (text, dice) => text.replaceAll(",", dice.one([",\n\t", ",\u00a0", ",,", ", "]))],
];

function cutOut(text: string, dice: Dice): string {
  const from = dice.upTo(text.length);
  return text.slice(0, from) + text.slice(from + 1 + dice.upTo(60));
}

function deep(text: string, depth: number, dice: Dice): string {
  const open = dice.one(["[", '{"a":']);
  return asValue(text, `${open.repeat(depth)}0${(open === "[" ? "]" : "}").repeat(depth)}`, dice);
}

function keyTwice(text: string, dice: Dice): string {
  const keys = [...text.matchAll(/"([^"\\]+)":(-?\d+|"[^"\\]*"|true|false)/g)];
  const key = keys.length > 0 ? dice.one(keys) : undefined;
  return key ? `${text.slice(0, key.index)}${key[0]},${text.slice(key.index)}` : text;
}

function afterBrace(text: string, piece: string, dice: Dice): string {
  const braces = [...text.matchAll(/\{(?=")/g)];
  const at = braces.length > 0 ? dice.one(braces).index + 1 : 0;
  return text.slice(0, at) + piece + text.slice(at);
}
