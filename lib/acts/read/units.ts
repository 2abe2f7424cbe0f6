/** Joins the words of a line into units: a named place, a side, a limb with its side, handles with their number, springs. */
import type { Facing, Move } from "#lib/plan/schema.ts";
import { type Amount, amountAt } from "./amounts.ts";
import { beginsWithFigure, classesOf, type Lexicon, nameAt } from "./lexicon.ts";
import { numberOf } from "./quantities.ts";
import type { Token } from "./tokens.ts";
import { FACING_OF_WORD, STATION_NOUNS } from "./vocabulary.ts";

/** `field` is the live field. */
export type SideWord = "left" | "right" | "other" | "field" | "same" | "first" | "any";

/** A word of a line, or several that belong together. */
export interface Unit extends Token {
  readonly classes: readonly string[];
  readonly amount: Amount["parts"] | undefined;
  readonly station: Move["station"] | undefined;
  readonly facing: Facing | undefined;
  readonly side: SideWord | undefined;
  readonly count: number | null | undefined;
}

export function unitsOf(tokens: readonly Token[], lexicon: Lexicon): Unit[] {
  const units: Unit[] = [];
  for (let at = 0; at < tokens.length; ) {
    const { unit, end } = unitAt(tokens, at, lexicon);
    units.push(unit);
    at = end;
  }
  return units;
}

interface UnitAt {
  readonly unit: Unit;
  readonly end: number;
}

const READERS = [nameUnit, fieldUnit, amountUnit, stationUnit, sideUnit, limbUnit, thingUnit];

function unitAt(tokens: readonly Token[], at: number, lexicon: Lexicon): UnitAt {
  for (const reader of READERS) {
    const found = reader(tokens, at, lexicon);
    if (found) return found;
  }
  const { word } = tokens[at] as Token;
  const classes = classesOf(word);
  return joined(tokens, at, at + 1, { classes, facing: classes.includes("facing") ? FACING_OF_WORD[word] : undefined });
}

type Parts = Omit<Partial<Unit>, keyof Token> & { readonly classes: readonly string[] };

/** All units have the same fields, since they are made and read at every key press. */
function joined(tokens: readonly Token[], at: number, end: number, parts: Parts): UnitAt {
  const [first, last] = [tokens[at] as Token, tokens[end - 1] as Token];
  const { classes, amount, station, facing, side, count } = parts;
  const { word, to } = last;
  return { unit: { word, from: first.from, to, gap: first.gap, classes, amount, station, facing, side, count }, end };
}

/** The word `n` further on in the same clause. */
const wordIn = (tokens: readonly Token[], at: number, n: number): string | undefined => {
  for (let i = at + 1; i <= at + n; i++) if (tokens[i]?.gap !== 0) return undefined;
  return tokens[at + n]?.word;
};

/** A move's name tells none of its acts: "the kneeling row". Of other moves only where it is said what comes next. */
function nameUnit(tokens: readonly Token[], at: number, { moves, others = [] }: Lexicon): UnitAt | null {
  const names = others.length > 0 && isCalled(tokens, at) ? [...moves, ...others] : moves;
  if (!names.some(([first]) => first === tokens[at]?.word)) return null;
  const name = names.find((words) => nameAt(words, (n) => wordIn(tokens, at, n)) !== null);
  return name ? joined(tokens, at, at + name.length, { classes: ["name"] }) : null;
}

const CALLING: ReadonlySet<string> = new Set(["next", "coming", "upcoming", "called"]);
/** "Coming up, the side plank and reach." */
function isCalled(tokens: readonly Token[], at: number): boolean {
  for (let n = Math.max(0, at - 4); n < at; n++) if (CALLING.has(tokens[n]?.word ?? "")) return true;
  return false;
}

function fieldUnit(tokens: readonly Token[], at: number): UnitAt | null {
  const word = tokens[at]?.word;
  if (word === "{springs}") {
    const end = classesOf(wordIn(tokens, at, 1) ?? "").includes("springs") ? at + 2 : at + 1;
    return joined(tokens, at, end, { classes: ["springs-field"] });
  }
  return word === "{move}" || word === "{next-move}" ? joined(tokens, at, at + 1, { classes: ["name"] }) : null;
}

function amountUnit(tokens: readonly Token[], at: number, lexicon: Lexicon): UnitAt | null {
  const word = tokens[at]?.word ?? "";
  if (!lexicon.amountStarts.has(word) && !beginsWithFigure(word)) return null;
  const amount = amountAt(tokens, at, lexicon);
  return amount && joined(tokens, at, amount.end, { classes: ["amount"], amount: amount.parts });
}

const STATION_CLASSES: Readonly<Record<Move["station"], readonly string[]>> = {
  carriage: ["station", "carriage"],
  floor: ["station"],
  front: ["station", "platform"],
  back: ["station", "platform"],
};
const STATIONS_BY_WORD = stationsByWord();

function stationsByWord() {
  const all = new Map<string, { readonly words: readonly string[]; readonly station: Move["station"] }[]>();
  for (const [noun, station] of STATION_NOUNS) {
    const words = noun.split(" ");
    // "Carriages" as well.
    for (const first of words.length > 1 ? [words[0] ?? ""] : [noun, `${noun}s`])
      all.set(first, [...(all.get(first) ?? []), { words, station }]);
  }
  return all;
}

function stationUnit(tokens: readonly Token[], at: number): UnitAt | null {
  for (const { words, station } of STATIONS_BY_WORD.get(tokens[at]?.word ?? "") ?? []) {
    if (nameAt(words, (n) => wordIn(tokens, at, n)) === null) continue;
    const classes = STATION_CLASSES[station];
    return joined(tokens, at, at + words.length, { classes, station });
  }
  if (!OF_A_BAR.has(tokens[at]?.word ?? "")) return null;
  const facing = FACING_OF_WORD[tokens[at]?.word ?? ""];
  return /^bars?$/.test(wordIn(tokens, at, 1) ?? "") ? joined(tokens, at, at + 2, { classes: ["bar"], facing }) : null;
}

const SIDE_WORDS: Readonly<Record<string, SideWord>> = {
  ...{
    left: "left",
    right: "right",
    other: "other",
    second: "other",
    opposite: "other",
    "{side}": "field",
    same: "same",
  },
  ...{ first: "first", both: "any", one: "any", each: "any", free: "any", working: "any", front: "any", back: "any" },
  ...{
    top: "any",
    bottom: "any",
    outside: "any",
    inside: "any",
    either: "any",
    two: "any",
    lower: "any",
    upper: "any",
  },
};

const sideWord = (word: string | undefined): SideWord | undefined =>
  word !== undefined && Object.hasOwn(SIDE_WORDS, word) ? SIDE_WORDS[word] : undefined;

/** "Left side", "other side"; "the left side of the carriage" is a place. */
function sideUnit(tokens: readonly Token[], at: number): UnitAt | null {
  const side = sideWord(tokens[at]?.word);
  if (!side) return null;
  const n = wordIn(tokens, at, 1) === "hand" ? 2 : 1;
  if (!/^side(?:s|'s)?$/.test(wordIn(tokens, at, n) ?? "")) {
    if (side !== "field") return null;
    // "{side} hand over" tells the side in passing.
    const near = classesOf(wordIn(tokens, at, 1) ?? "").includes("limb");
    return joined(tokens, at, at + 1, { classes: near ? ["side-field", "of-limb"] : ["side-field"], side });
  }
  // "Turn to the front side."
  const facing = side === "any" ? FACING_OF_WORD[tokens[at]?.word ?? ""] : undefined;
  if (facing) return joined(tokens, at, at + n + 1, { classes: ["facing"], facing });
  const isPlace = wordIn(tokens, at, n + 1) === "of";
  return joined(tokens, at, at + n + 1, { classes: [isPlace ? "place" : "side"], side });
}

/** "Left hand", "{side} foot", "other leg", "both knees". The back that is flat or long is a body's as well. */
function limbUnit(tokens: readonly Token[], at: number): UnitAt | null {
  const side = sideWord(tokens[at]?.word);
  const next = wordIn(tokens, at, 1);
  // "The left leg's turn".
  const limb = next === undefined ? [] : classesOf(next.replace(/'s$/, ""));
  if (side && limb.includes("limb"))
    return joined(tokens, at, at + 2, {
      classes: [...limb, "limb", "sided"],
      side,
      ...(EACH.has(tokens[at]?.word ?? "") ? { count: 2 } : {}),
    });

  return tokens[at]?.word === "back" && isOfABody(tokens, at)
    ? joined(tokens, at, at + 1, { classes: ["body"] })
    : null;
}

const OF_A_BAR: ReadonlySet<string> = new Set(["front", "back", "foot", "push"]);
const EACH: ReadonlySet<string> = new Set(["each", "both", "either"]);
const FLAT: ReadonlySet<string> = new Set(["flat", "long", "straight", "tall", "neutral", "wide", "strong", "soft"]);
const OWN: ReadonlySet<string> = new Set([
  ...["your", "long", "flat", "lower", "low", "strong", "straight", "upper", "neutral", "mid", "tall"],
]);
function isOfABody(tokens: readonly Token[], at: number): boolean {
  if (FLAT.has(wordIn(tokens, at, 1) ?? "")) return true;
  if (tokens[at]?.gap !== 0 || !OWN.has(tokens[at - 1]?.word ?? "")) return false;
  // "On your back" is a position.
  return !["on", "onto"].includes(tokens[at - 2]?.word ?? "");
}

const BEFORE_A_THING: ReadonlySet<string> = new Set([
  "both",
  "the",
  "one",
  "of",
  "two",
  "other",
  "each",
  "a",
  "your",
  "all",
  "second",
  "another",
  "more",
]);
/** "One of the other two" has five; the bound is for a line made to be slow. */
const MOST_BEFORE = 6;
const FURTHER: ReadonlySet<string> = new Set(["other", "second", "another", "more"]);
const OF_A_STRAP: ReadonlySet<string> = new Set(["cable", "foot", "front", "back", "ankle", "hand", "leg"]);

/** Handles with their number, straps of any kind. */
function thingUnit(tokens: readonly Token[], at: number): UnitAt | null {
  let end = at;
  while (end < at + MOST_BEFORE && BEFORE_A_THING.has(wordIn(tokens, at, end - at) ?? "")) end++;
  const modified = end;
  while (end < at + MOST_BEFORE && OF_A_STRAP.has(wordIn(tokens, at, end - at) ?? "")) end++;
  const noun = wordIn(tokens, at, end - at);
  const classes = noun === undefined ? [] : classesOf(noun);
  if (!classes.includes("strap") && !classes.includes("handle")) return null;
  const says = tokens.slice(at, modified).map(({ word }) => word);
  const side = says.some((word) => FURTHER.has(word)) ? { side: "other" as const } : {};
  if (classes.includes("strap")) return joined(tokens, at, end + 1, { classes: ["strap"], ...side });
  const number = says.map((word) => (word === "a" ? 1 : numberOf(word))).find((n) => n !== null);
  const count = number ?? (says.includes("each") || says.includes("all") ? null : side.side ? 1 : null);
  return joined(tokens, at, end + 1, { classes: ["handle"], count, ...side });
}
