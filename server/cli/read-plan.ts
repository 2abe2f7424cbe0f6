/** Reads the bytes of a plan file, into a plan or one line that says what is wrong. */

import type { Plan } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { utf8Text } from "./utf8.ts";

export type PlanRead = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly say: string };

/** Never throws. */
export function readPlanBytes(bytes: Uint8Array): PlanRead {
  const text = utf8Text(bytes);
  if (text === undefined) return { ok: false, say: "the plan file should be UTF-8 text" };
  const parsed = parsePlan(text);
  return parsed.ok ? parsed : { ok: false, say: parsed.message };
}
