/**
 * Lines the library can add to a script at one touch: a move's easier and harder ways, and a prompt for each thing the
 * move asks of a body. Prompts are general (common practice, no source): they name a way out and defer to the people
 * who know, and are there to be put into the coach's own words.
 */
import type { Move, MoveCaution, ScriptLine } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";

const PROMPTS: Readonly<Record<MoveCaution, string>> = {
  "wrist-load": "If your wrists mind the weight, come down to your forearms or rest.",
  kneeling: "If your knees mind, add a pad or take the standing way.",
  overhead: "Keep your arms only as high as your shoulders are easy.",
  "loaded-flexion": "If your back should not bend under load, keep it long and make the move smaller.",
  "loaded-rotation": "If your back should not turn under load, stay facing forward and hold.",
  supine: "If lying on your back does not suit you, prop yourself up or take the seated way.",
  prone: "If lying face down does not suit you, take it on hands and knees.",
  "head-down": "If your head should not be low, or you feel dizzy, stay level.",
  "long-hold": "Keep breathing all through; come down for a breath whenever you need one.",
  "unstable-carriage": "The carriage moves easily here: small and slow first, hands ready.",
  "single-leg-balance": "Keep a hand near something firm; both feet down whenever you need.",
};

/** Said beside the prompts wherever they are offered. */
export const PROMPT_NOTE =
  "Prompts are general. A person's own clinician, the machine maker's manual and local rules come first.";

/** What a move can offer to a script that does not have it yet, easier ways first. Texts are a plan file's. */
export function stockLines(move: Move | undefined, script: readonly ScriptLine[]): ScriptLine[] {
  if (!move) return [];
  const offered: ScriptLine[] = [
    ...(move.cautions ?? []).map((caution): ScriptLine => ({ kind: "safety", text: PROMPTS[caution] })),
    ...(move.easier ?? []).map((text): ScriptLine => ({ kind: "easier", text: escapeScriptText(text) })),
    ...(move.harder ?? []).map((text): ScriptLine => ({ kind: "harder", text: escapeScriptText(text) })),
  ];
  const has = new Set(script.map((line) => plain(line.text)));
  return offered.filter((line) => !has.has(plain(line.text)));
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s.]+/gu, " ")
    .trim();
