/** Which half of a move's repetition a motion is: to lower is the way out of a squat and the way back of a curl. */
import type { Move } from "#lib/plan/schema.ts";
import type { BreathClaim } from "#lib/talk/claims/types.ts";

type Half = "out" | "back";
type During = BreathClaim["during"];
/** The half against the load, or the one that gives way to it; undefined where the move does not tell. */
type Effort = "work" | "ease" | undefined;

export function halfOfMotion(move: Move, during: During): Half | undefined {
  if (during === "out" || during === "back") return during;
  const effort = EFFORT[during](move);
  if (effort === undefined) return undefined;
  return effort === "work" ? workHalf(move) : other(workHalf(move));
}

const other = (half: Half): Half => (half === "out" ? "back" : "out");
const flip = (effort: Effort): Effort => effort && (effort === "work" ? "ease" : "work");

/**
 * The half in which people work against the load. Where pattern and position leave it open, it is taken to be the one with
 * the breath out: common practice, no source.
 */
function workHalf({ pattern, position, exhaleOn }: Move): Half {
  switch (pattern) {
    case "lunge":
      return "back";
    case "squat":
      return position === "standing" ? "back" : "out";
    case "push":
      return position === "plank" ? "back" : "out";
    case "pull":
    case "rotation":
      return "out";
    default:
      return exhaleOn ?? "out";
  }
}

/** Up and down say nothing of a row or a chest press, and the other way round of a pull-down. */
function upwards({ name, pattern }: Move): Effort {
  if (/\b(?:down|lower\w*|drop\w*)\b/i.test(name)) return "ease";
  const isLevel = pattern === "pull" || (pattern === "push" && !/overhead|push-?\s?up/i.test(name));
  return isLevel && !/curl|upright|raise|lift|shrug|calf/i.test(name) ? undefined : "work";
}

function opening({ pattern, name }: Move): Effort {
  if (pattern === "pull") return "work";
  return pattern === "push" && /fly/i.test(name) ? "ease" : undefined;
}

const isPull = (pattern: Move["pattern"], name: string): boolean => pattern === "pull" || /\b(?:row|pull)/i.test(name);
const isUntold = (pattern: Move["pattern"]): boolean => pattern === "plank" || pattern === "carry";

function bending({ pattern, name }: Move): Effort {
  if (isPull(pattern, name)) return /curl/i.test(name) ? "work" : undefined;
  if (pattern === "flexion" || /pike|tuck|curl|drawn/i.test(name)) return "work";
  return isUntold(pattern) && !/press|push|squat|lunge/i.test(name) ? undefined : "ease";
}

function lengthening({ pattern, name }: Move): Effort {
  if (/reach|extension/i.test(name)) return "work";
  if (isPull(pattern, name) || /tuck|pike|curl|drawn/i.test(name)) return "ease";
  return pattern === "push" || pattern === "squat" || pattern === "lunge" || /press|push|squat|lunge/i.test(name)
    ? "work"
    : undefined;
}

const EFFORT: Readonly<Record<Exclude<During, Half>, (move: Move) => Effort>> = {
  work: () => "work",
  ease: () => "ease",
  push: ({ pattern }) => (pattern === "pull" ? undefined : "work"),
  pull: ({ pattern }) => (pattern === "push" || pattern === "squat" || pattern === "lunge" ? undefined : "work"),
  up: upwards,
  down: (move) => flip(upwards(move)),
  open: opening,
  close: (move) => flip(opening(move)),
  bend: bending,
  long: lengthening,
};
