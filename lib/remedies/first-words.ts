/** The words of a first draft that are the same in every studio. Common practice, no source; a coach puts their own. */
import type { Move } from "#lib/plan/schema.ts";

const START: Readonly<Record<Move["pattern"], string>> = {
  push: "Press away now.",
  pull: "Pull now.",
  squat: "Bend the knees now.",
  hinge: "Hinge at the hips now.",
  lunge: "Lower now.",
  plank: "Slide out now.",
  flexion: "Curl in now.",
  rotation: "Rotate now.",
  lateral: "Lean over now.",
  extension: "Lengthen up now.",
  carry: "Lift now.",
};

export const NOTHING_CHANGES = "Stay as you are.";

export const draftStart = (move: Move): string => (isHeld(move) ? "Hold it here." : START[move.pattern]);

export function draftBreath(move: Move): string {
  if (isHeld(move)) return "Keep breathing while you hold.";
  if (move.exhaleOn === "out") return "Breathe out on the way out, in on the way back.";
  if (move.exhaleOn === "back") return "Breathe in on the way out, out on the way back.";
  return "Breathe out with the effort.";
}

const isHeld = ({ tempo }: Move): boolean => "holdSeconds" in tempo;
