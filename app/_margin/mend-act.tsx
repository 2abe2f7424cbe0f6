"use client";
/** The one act that mends a finding, as one undo step; nothing when there is none or for somebody who reads along. */
import type { PlanSession } from "#app/_plan/session.ts";
import type { Finding } from "#lib/rules/types.ts";

export function MendAct(_props: { readonly session: PlanSession; readonly finding: Finding }) {
  return null;
}
