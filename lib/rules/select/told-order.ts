/**
 * The order in which a set-up tells its acts. Only unmistakable signs count, since a wrong order can be "must fix": a
 * spring by number and name, a turn by its verb, a handle put down, a foot taken out. What is put off ("two light once
 * the carriage is home") is in order.
 */
import { type PlannedAct, plannedActs } from "#lib/acts/planned.ts";
import type { Move, Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { BRINGS_HOME, bareWords, CARRIAGE_HOME, NUMBER, SPRINGS_FIELD, saidIn, saidInPauses } from "./told.ts";

/** What a set-up tells too early, in words; null where the order is right. */
export interface ToldLate {
  /** Springs before the carriage comes home. */
  readonly carriage: string | null;
  /** Springs or a new place before the handles are down. */
  readonly handles: string | null;
  /** Springs or a new place before a foot is out of its strap. */
  readonly strap: string | null;
  /** What holds an open carriage is let go before it comes home. */
  readonly home: string | null;
}

export const isToldLate = (plan: Plan, step: SetupStep): boolean =>
  Object.values(toldLate(plan, step)).some((early) => early !== null);

export function toldLate(plan: Plan, step: SetupStep): ToldLate {
  const acts = step.before ? plannedActs(plan, step.before.item, step.item) : [];
  const has = (act: PlannedAct["act"]): boolean => acts.some((one) => one.act === act);
  // Pauses are heard before the move's own lines. Start and safety lines are about the work, so they are left out.
  const words = `${saidInPauses(plan, step)}|${saidIn(plan, step.item, ["setup"])}`;
  const early = (needed: (words: string) => Span | null, told: readonly Told[]): string | null => {
    const said = told.filter(({ span }) => span !== null);
    const by = said.length > 0 ? needed(words) : null;
    return said.find(({ span }) => by && span && span.from < by.from && !isPutOff(words, span, by))?.early ?? null;
  };
  const springs: Told[] = has("carriage-home") ? [{ early: "the springs", span: first(words, springAct(plan)) }] : [];
  const moved = has("handles-down") || has("strap-off") ? acts.map((act) => placeAct(words, act)) : [];
  return {
    carriage: early(carriageHome, springs),
    handles: has("handles-down") ? early((said) => first(said, HANDLES_DOWN), [...springs, ...moved]) : null,
    strap: has("strap-off") ? early((said) => first(said, STRAP_OFF), [...springs, ...moved]) : null,
    home: early(carriageHome, letGo(step, words, has)),
  };
}

const carriageHome = (words: string): Span | null => earlier(first(words, CARRIAGE_HOME), first(words, BRINGS_HOME));

/** Something that may be told, and where; the span is null where it is not told. */
interface Told {
  readonly early: string;
  readonly span: Span | null;
}

/** Handles and cable straps that hold an open carriage against its springs. */
function letGo({ before, carriage }: SetupStep, words: string, has: (act: PlannedAct["act"]) => boolean): Told[] {
  const pulled = Object.values(before?.setup.springs ?? {}).some((count) => count > 0);
  if (carriage === "home" || !pulled) return [];
  return [
    ...(has("handles-down") ? [{ early: "handles down", span: first(words, HANDLES_LET_GO) }] : []),
    ...(has("strap-off") && before?.setup.feet === "cable-strap"
      ? [{ early: "out of the strap", span: first(words, STRAP_OFF) }]
      : []),
  ];
}

/** Character positions in the words. */
interface Span {
  readonly from: number;
  readonly to: number;
}

function first(words: string, sign: RegExp): Span | null {
  const found = sign.exec(words);
  return found && { from: found.index, to: found.index + found[0].length };
}

const earlier = (a: Span | null, b: Span | null): Span | null => (!a || (b && b.from < a.from) ? b : a);

/** "Once", "when" or "first" between the two reverses their order; "don't" before the first cancels it. */
function isPutOff(words: string, told: Span, needed: Span): boolean {
  const between = words.slice(told.to, needed.from);
  const before = words.slice(Math.max(0, told.from - 30), told.from);
  return (
    /\b(?:once|when|after|until|till|as soon as|with|first|before (?:that|this))\b[^|]*$/.test(between) ||
    /\b(?:dont|do not|never|not yet|before)\b[^|]*$/.test(before) ||
    /^ first\b/.test(words.slice(needed.to))
  );
}

/** Handles put down by name, or "let go". */
const HANDLES_LET_GO =
  /\b(?:handles?|grips?) (?:down|away|back)\b|\b(?:put|set|lay|hang|drop|leave) (?:\w+ ){0,3}handles?\b|\blet go\b|\brelease (?:\w+ )?handles?\b/;
const HANDLES_DOWN = new RegExp(
  `${HANDLES_LET_GO.source}|\\b(?:cables?|them|it) (?:down|away|back)\\b|\\bhands (?:free|empty)\\b`,
);
const STRAP_OFF =
  /\bout of (?:\w+ )?(?:straps?|loops?|cuffs?|slings?)\b|\b(?:foot|feet) out\b|\b(?:step|slip) out\b|\b(?:straps?|loops?|cuffs?) off\b|\bunhook\b|\bunclip\b/;

/** The live field, a number with a spring's name, or a spring that goes on or off. */
function springAct(plan: Plan): RegExp {
  const names = plan.equipment.springs.map(({ label }) => bareWords(label)).filter((name) => name !== "");
  const name = `(?:${[...names, "spring"].map(escaped).join("|")})s?`;
  return new RegExp(`${SPRINGS_FIELD}|\\b${NUMBER} (?:more )?${name} |\\b${name} (?:comes? |goes? )?(?:on|off)\\b`);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

const TURN = /\b(?:face|facing|turn|spin|pivot|swivel)\b/;
const STATION: Readonly<Record<Move["station"], RegExp>> = {
  front: /\b(?:to|onto|on) the front platform\b/,
  back: /\b(?:to|onto|on) the back platform\b/,
  carriage: /\b(?:onto|on to) the carriage\b/,
  floor: /\b(?:to|onto|on to) the floor\b|\bstep off\b/,
};
const POSITION: Readonly<Record<Move["position"], RegExp>> = {
  plank: /\b(?:come|up|to|into) (?:\w+ ){0,2}plank\b/,
  quadruped: /\bhands and knees\b|\ball fours\b/,
  kneeling: /\bkneel\b/,
  seated: /\bsit\b/,
  supine: /\blie\b/,
  prone: /\blie\b/,
  "side-lying": /\blie\b/,
  standing: /\bstand\b/,
  inverted: /\bhips above the head\b/,
};

function placeAct(words: string, act: PlannedAct): Told {
  switch (act.act) {
    case "turn":
      return { early: "the turn", span: first(words, TURN) };
    case "station":
      return { early: "the new station", span: first(words, STATION[act.station]) };
    case "position":
      return { early: "the new position", span: first(words, POSITION[act.position]) };
    default:
      return { early: "", span: null };
  }
}
