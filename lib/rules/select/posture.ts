/** Whether words name where people go and which position they take. One sign is enough. */
import type { SetupAct } from "#lib/acts/compose.ts";
import type { Move } from "#lib/plan/schema.ts";

const STATION: Readonly<Record<Move["station"], RegExp>> = {
  front: /\bfront platform\b/,
  back: /\bback platform\b/,
  carriage: /\b(?:on|onto|on to) the carriage\b/,
  floor: /\bfloor\b|\bstep off\b|\bground\b/,
};
const LYING = "\\b(?:lie|lies|lying)\\b";
const POSITION: Readonly<Record<Move["position"], RegExp>> = {
  plank: /\bplanks?\b/,
  quadruped: /\bhands and knees\b|\ball fours\b/,
  kneeling: /\bkneel(?:s|ing)?\b/,
  seated: /\b(?:sit|sits|sitting|seated)\b/,
  supine: new RegExp(`${LYING}|\\bsupine\\b|\\bon your back\\b`),
  prone: new RegExp(`${LYING}|\\bprone\\b|\\bface down\\b`),
  "side-lying": new RegExp(`${LYING}|\\bon your side\\b`),
  standing: /\bstand(?:s|ing)?\b/,
  inverted: /\bhips (?:above|over) the head\b/,
};

/** False for every other act. */
export function namesPosture(words: string, act: SetupAct): boolean {
  if (act.act === "station") return STATION[act.station].test(words);
  return act.act === "position" && POSITION[act.position].test(words);
}
