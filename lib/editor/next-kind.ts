/** Which kind the line after this one most likely is (common practice of talking a move through, no source). */
import type { CueKind } from "#lib/plan/schema.ts";

const USUAL_ORDER: readonly CueKind[] = ["setup", "safety", "start", "breath", "form", "focus", "easier", "harder"];

export interface LineContext {
  readonly kind: CueKind;
  /** Kinds of all lines of the script, this one too. */
  readonly present: readonly CueKind[];
  /** Whether the move asks for care, so that a safety line belongs. */
  readonly needsSafety: boolean;
}

/** The next kind in the usual order that the script lacks; form when none is missing or the line stands outside it. */
export function nextKind({ kind, present, needsSafety }: LineContext): CueKind {
  if (kind === "crew") return "crew";
  const wanted = USUAL_ORDER.filter((k) => k !== "safety" || needsSafety);
  const after = wanted.slice(USUAL_ORDER.indexOf(kind) < 0 ? 0 : indexAfter(wanted, kind));
  return after.find((k) => !present.includes(k)) ?? "form";
}

function indexAfter(wanted: readonly CueKind[], kind: CueKind): number {
  const rank = USUAL_ORDER.indexOf(kind);
  return wanted.filter((k) => USUAL_ORDER.indexOf(k) <= rank).length;
}
