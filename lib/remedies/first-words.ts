/** The words of a first draft that are the same in every studio. Common practice, no source; a coach puts their own. */
import type { Move } from "#lib/plan/schema.ts";

/** True of every move: what its joints do is the library's to say, and a coach's. */
const BEGIN = "Begin now.";

export const NOTHING_CHANGES = "Stay as you are.";

export const draftStart = (move: Move): string => (isHeld(move) ? "Hold it here." : BEGIN);

export function draftBreath(move: Move): string {
  if (isHeld(move)) return "Keep breathing while you hold.";
  if (move.exhaleOn === "out") return "Breathe out on the way out, in on the way back.";
  if (move.exhaleOn === "back") return "Breathe in on the way out, out on the way back.";
  return "Breathe out with the effort.";
}

const isHeld = ({ tempo }: Move): boolean => "holdSeconds" in tempo;
