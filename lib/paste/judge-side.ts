/** Which side an item is for, or the doubt about it. */
import { sideWords } from "#lib/plan/format.ts";
import type { ItemSide, Move } from "#lib/plan/schema.ts";
import type { RowAnswer } from "./answers.ts";
import type { DoubtChoice, PasteDoubt } from "./judged.ts";
import { SIDE_SENTENCES } from "./paste-words.ts";
import type { RowReading, RowSide } from "./types.ts";

export interface SideJudged {
  readonly side?: RowSide;
  readonly doubt?: PasteDoubt;
  readonly notes: readonly string[];
}

export interface SideQuestion {
  readonly reading: RowReading;
  readonly answer: RowAnswer;
  readonly move: Move;
  /** The sides an item of this move may have. */
  readonly sides: readonly ItemSide[];
}

export function judgeSide(q: SideQuestion): SideJudged {
  const { answer, sides, move } = q;
  if (answer.side !== undefined && possible(answer.side, sides)) return { side: answer.side, notes: [] };
  const named = namedSide(q.reading);
  if (named === "several") return several(q);
  if (named === undefined) return move.sides === "each" ? notNamed(q) : { side: sides[0] ?? "both", notes: [] };
  if (possible(named, sides)) return { side: named, notes: [] };
  if (named === "both" && sides.includes("left")) {
    if (move.sides === "alternating") return { side: "alternating", notes: [SIDE_SENTENCES.asAlternating] };
    return { side: "left-right", notes: [SIDE_SENTENCES.asPair] };
  }
  return impossible(q, named);
}

/** The side the row names: two sides with a time each count as left and right. */
function namedSide({ sides, times }: RowReading): RowSide | "several" | undefined {
  const named = [...new Set(sides)];
  const [first, second] = named;
  if (named.length < 2) return first;
  const pair = (first === "left" && second === "right") || (first === "right" && second === "left");
  if (named.length === 2 && pair && times.length === 2 && times[0]?.seconds === times[1]?.seconds) {
    return first === "left" ? "left-right" : "right-left";
  }
  return "several";
}

const possible = (side: RowSide, sides: readonly ItemSide[]): boolean =>
  side === "left-right" || side === "right-left"
    ? sides.includes("left") && sides.includes("right")
    : sides.includes(side);

export const rowSideWords = (side: RowSide): string => {
  if (side === "left-right") return "left, then right";
  return side === "right-left" ? "right, then left" : sideWords(side);
};

const choiceOf = (side: RowSide): DoubtChoice => {
  const words = side === "left-right" ? "Left and right" : rowSideWords(side);
  return { label: words.charAt(0).toUpperCase() + words.slice(1), answer: { row: { side } } };
};

/** Every side this move can have, pairs first. */
function sideChoices(sides: readonly ItemSide[]): DoubtChoice[] {
  const two: RowSide[] = possible("left-right", sides) ? ["left-right"] : [];
  return [...two, ...sides].map(choiceOf);
}

const doubt = (q: SideQuestion, say: string, like?: string): SideJudged => ({
  doubt: { about: "side", say, choices: sideChoices(q.sides), ...(like ? { like } : {}) },
  notes: [],
});

const notNamed = (q: SideQuestion): SideJudged => doubt(q, SIDE_SENTENCES.notNamed(q.move.name), "side not named");

const several = (q: SideQuestion): SideJudged =>
  doubt(q, SIDE_SENTENCES.several([...new Set(q.reading.sides)].map(rowSideWords)));

function impossible(q: SideQuestion, named: RowSide): SideJudged {
  return doubt(q, SIDE_SENTENCES.impossible(q.move.name, q.move.sides === "both", rowSideWords(named)));
}
