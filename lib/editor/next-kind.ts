/** The kind that the line after this one most likely is (common practice in talking a move through, no source). */
import type { CueKind } from "#lib/plan/schema.ts";

/** Without safety: marking a line as one answers the findings that ask for one, so only a person may do that. */
const USUAL_ORDER: readonly CueKind[] = ["setup", "start", "breath", "form", "focus", "easier", "harder"];

export interface LineContext {
  readonly kind: CueKind;
  /** Kinds of all lines of the script, this one included. */
  readonly present: readonly CueKind[];
}

/**
 * The next kind in the usual order that the script lacks; form when none is missing or this kind is outside the order.
 */
export function nextKind({ kind, present }: LineContext): CueKind {
  if (kind === "crew") return "crew";
  // A safety line is followed by what follows the set-up.
  const rank = USUAL_ORDER.indexOf(kind === "safety" ? "setup" : kind);
  return USUAL_ORDER.slice(rank + 1).find((k) => !present.includes(k)) ?? "form";
}
