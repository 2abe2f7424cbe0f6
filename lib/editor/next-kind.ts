/** Which kind the line after this one most likely is (common practice of talking a move through, no source). */
import type { CueKind } from "#lib/plan/schema.ts";

/** Without safety: a line counts as one, and quiets what asks for one, only where somebody has said that it is. */
const USUAL_ORDER: readonly CueKind[] = ["setup", "start", "breath", "form", "focus", "easier", "harder"];

export interface LineContext {
  readonly kind: CueKind;
  /** Kinds of all lines of the script, this one too. */
  readonly present: readonly CueKind[];
}

/** The next kind in the usual order that the script lacks; form when none is missing or the line stands outside it. */
export function nextKind({ kind, present }: LineContext): CueKind {
  if (kind === "crew") return "crew";
  // What comes after a safety line comes after the set-up.
  const rank = USUAL_ORDER.indexOf(kind === "safety" ? "setup" : kind);
  return USUAL_ORDER.slice(rank + 1).find((k) => !present.includes(k)) ?? "form";
}
