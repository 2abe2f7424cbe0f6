/**
 * Lines the library can add to a script in one tap: a move's easier and harder ways, and a prompt for each caution of
 * the move. Prompts are general (common practice, no source): they name a way out and defer to the people who know, and
 * are there for the coach to put into their own words.
 */
import type { Move, MoveCaution, ScriptLine } from "#lib/plan/schema.ts";
import { escapeScriptText } from "#lib/plan/script-text.ts";

const PROMPTS: Readonly<Record<MoveCaution, string>> = {
  "wrist-load": "If this is hard on your wrists, come down to your forearms or rest.",
  kneeling: "If kneeling is hard on your knees, add a pad or do it standing.",
  overhead: "Raise your arms only as high as your shoulders are comfortable.",
  "loaded-flexion": "If your back should not bend under load, keep it long and make the move smaller.",
  "loaded-rotation": "If your back should not turn under load, stay facing forward and hold.",
  supine: "If lying on your back does not suit you, prop yourself up or do it seated.",
  prone: "If lying face down does not suit you, do it on hands and knees.",
  "head-down": "If your head should not be low, or you feel dizzy, keep your head level with your hips.",
  "long-hold": "Keep breathing throughout; come down for a breath whenever you need one.",
  "unstable-carriage": "The carriage moves easily here: start small and slow, hands ready.",
  "single-leg-balance": "Keep a hand near something firm; put both feet down whenever you need to.",
};

export const promptFor = (caution: MoveCaution): string => PROMPTS[caution];

/** Shown beside the prompts wherever they are offered. */
export const PROMPT_NOTE =
  "Prompts are general. A person's own clinician, the machine maker's manual and local rules come first.";

/** Lines a move can offer that its script does not have yet, easier ways first. Texts are as in a plan file. */
export function stockLines(move: Move | undefined, script: readonly ScriptLine[]): ScriptLine[] {
  if (!move) return [];
  const offered: ScriptLine[] = [
    ...(move.cautions ?? []).map((caution): ScriptLine => ({ kind: "safety", text: promptFor(caution) })),
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
