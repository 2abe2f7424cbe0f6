/** A move's facts as words, and the search over them. Pure. */
import { GROUPS, type Group, type Move, type MoveCaution } from "#lib/plan/schema.ts";

export const CAUTION_WORDS: Record<MoveCaution, string> = {
  "wrist-load": "weight on the wrists",
  kneeling: "kneeling",
  overhead: "arms overhead",
  "loaded-flexion": "bending forward under load",
  "loaded-rotation": "turning under load",
  supine: "lying on the back",
  prone: "lying face down",
  "head-down": "head below the hips",
  "long-hold": "a long hold",
  "unstable-carriage": "a carriage that moves easily",
  "single-leg-balance": "balance on one leg",
};

const plain = (id: string): string => id.replaceAll("-", " ");

export const groupWords = plain;
export const patternWords = plain;

/** "prime mover chest; helpers triceps, shoulders". */
export function muscleWords(move: Move): { prime: string[]; helpers: string[] } {
  const weighted = GROUPS.map((group) => [group, move.muscles[group] ?? 0] as const);
  const prime = weighted.filter(([, weight]) => weight >= 1).map(([group]) => plain(group));
  const helpers = weighted.filter(([, weight]) => weight > 0 && weight < 1).map(([group]) => plain(group));
  return { prime, helpers };
}

const SIDES = { both: "both sides at once", each: "one side, then the other", alternating: "side to side" } as const;

export function setupWords(move: Move): string {
  const station =
    move.station === "carriage"
      ? "on the carriage"
      : move.station === "floor"
        ? "on the floor"
        : `at the ${move.station}`;
  const hands = move.hands === "free" ? null : `hands: ${plain(move.hands)}`;
  const feet = move.feet === "free" ? null : `feet: ${plain(move.feet)}`;
  return [`${plain(move.position)} ${station}, facing ${move.facing}`, hands, feet, SIDES[move.sides]]
    .filter((word) => word !== null)
    .join("; ");
}

export function tempoWords(move: Move): string {
  if ("holdSeconds" in move.tempo) return "held";
  const { outSeconds, outHoldSeconds = 0, backSeconds, backHoldSeconds = 0 } = move.tempo;
  const hold = (seconds: number) => (seconds > 0 ? `, hold ${seconds} s` : "");
  const cycle = outSeconds + outHoldSeconds + backSeconds + backHoldSeconds;
  return `${outSeconds} s out${hold(outHoldSeconds)}, ${backSeconds} s back${hold(backHoldSeconds)}: ${cycle} s a repetition`;
}

export function loadWords(move: Move): string {
  if (move.resistance === "bodyweight") return "body weight alone";
  const range = move.loadN ? `${move.loadN[0]} to ${move.loadN[1]} N at mid-travel` : "no range given";
  return move.resistance === "assisted" ? `springs help, ${range}` : range;
}

/** "at least 1 light; at most 2 light, no strong". */
export function springLimits(move: Move): string {
  const list = (counts: Readonly<Record<string, number>> = {}) =>
    Object.entries(counts).map(([id, n]) => (n === 0 ? `no ${id}` : `${n} ${id}`));
  const min = list(move.springs?.min);
  const max = list(move.springs?.max);
  return [min.length > 0 ? `at least ${min.join(", ")}` : "", max.length > 0 ? `at most ${max.join(", ")}` : ""]
    .filter((part) => part !== "")
    .join("; ");
}

export interface LibraryFilter {
  readonly text: string;
  readonly group: Group | "";
  readonly pattern: Move["pattern"] | "";
  readonly position: Move["position"] | "";
  /** Leave out moves that ask this of a body. */
  readonly without: MoveCaution | "";
}
export const NO_FILTER: LibraryFilter = { text: "", group: "", pattern: "", position: "", without: "" };

/** Does a move pass? Every word typed must stand somewhere in its name or facts. */
export function passes(move: Move, filter: LibraryFilter): boolean {
  if (filter.group !== "" && (move.muscles[filter.group] ?? 0) <= 0) return false;
  if (filter.pattern !== "" && move.pattern !== filter.pattern) return false;
  if (filter.position !== "" && move.position !== filter.position) return false;
  if (filter.without !== "" && move.cautions?.includes(filter.without)) return false;
  const facts = factsOf(move);
  return filter.text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => facts.includes(word));
}

function factsOf(move: Move): string {
  const { prime, helpers } = muscleWords(move);
  const cautions = (move.cautions ?? []).map((tag) => CAUTION_WORDS[tag]);
  return [move.name, move.pattern, setupWords(move), ...prime, ...helpers, ...cautions].join(" ").toLowerCase();
}
