"use client";
/** Where the figures of the line over the plan lead: to the next finding, and to what the figure of talk is made of. */
import { useRef } from "react";
import { showSlip } from "#app/_margin/show-slip.ts";
import { TALK_PART } from "#app/_rate/talk-part-id.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { nextFinding } from "./next-finding.ts";
import type { Page } from "./use-page.ts";

export function useBandActs(session: PlanSession, { acts: { show } }: Page) {
  const last = useRef<Finding | null>(null);
  /** A finding stands in the plate of its first item, else in the panel of the class. */
  const onFinding = (level: FindingLevel) => {
    const found = nextFinding(session.getSnapshot(), level, last.current);
    last.current = found ?? null;
    if (!found) return;
    show(found.items[0] ?? null);
    // The plate is drawn in the first frame; what it holds has its place in the second.
    requestAnimationFrame(() => requestAnimationFrame(() => showSlip(found, true)));
  };
  const onTalk = () => {
    show(null);
    requestAnimationFrame(() => document.getElementById(TALK_PART)?.focus());
  };
  return { onFinding, onTalk };
}
