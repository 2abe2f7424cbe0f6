/** A class in words, shown while its page is loading: read from the document as the server has it. */
import { type OutlinePart, outlineOf } from "#lib/plan/outline.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "./open-plan.ts";
import { withPlan } from "./plan-doc.ts";

/** Errors: 401, 403, 404; 409 or 503 when the document cannot be read at the moment. */
export function readOutline(app: Springline, actor: Actor, id: string): Result<OutlinePart[]> {
  const opened = openPlan(app, actor, id, "plan.read");
  return opened.ok ? withPlan(app, opened.value.row, ({ plan }) => ok(outlineOf(plan))) : opened;
}
