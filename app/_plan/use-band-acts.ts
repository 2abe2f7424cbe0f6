"use client";
/** Where the band's figures lead: to the next finding, and to what the figure of talk is made of. */
import { useRef } from "react";
import { showSlip } from "#app/_margin/show-slip.ts";
import { TALK_PART } from "#app/_rate/talk-part.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { nextFinding } from "./next-finding.ts";
import type { Page } from "./use-page.ts";

export function useBandActs(session: PlanSession, { phone, openSheet }: Page) {
  const last = useRef<Finding | null>(null);
  /** Where there is no margin, a finding stands among the fields of its item: on a phone the sheet opens for it. */
  const onFinding = (level: FindingLevel) => {
    const found = nextFinding(session.getSnapshot(), level, last.current);
    last.current = found ?? null;
    session.select(found?.items[0] ?? null);
    if (!found) return;
    if (phone || found.items.length === 0) openSheet();
    // The sheet is drawn in the first frame; what it holds has its place in the second.
    requestAnimationFrame(() => requestAnimationFrame(() => showSlip(found, phone)));
  };
  const onTalk = () => {
    session.select(null);
    openSheet();
    requestAnimationFrame(() => document.getElementById(TALK_PART)?.focus());
  };
  return { onFinding, onTalk };
}
