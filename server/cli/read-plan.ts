/** A plan file's bytes into a plan, or one line that says what is wrong with them. */

import type { Plan } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";

export type PlanRead = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly say: string };

/** Never throws. */
export function readPlanBytes(bytes: Uint8Array): PlanRead {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return { ok: false, say: "the plan file should be UTF-8 text" };
  }
  const parsed = parsePlan(text);
  return parsed.ok ? parsed : { ok: false, say: parsed.message };
}
