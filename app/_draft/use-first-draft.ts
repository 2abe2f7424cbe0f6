"use client";
/** What is proposed for the plan as it is, without what was left on this device; nothing for somebody who may not write. */
import { useMemo } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { type FirstDraft, firstDraft } from "#lib/draft/first-draft.ts";
import { leftKey, leftOf, useLeft } from "./left-lines.ts";

const NOTHING: FirstDraft = new Map();

export function useFirstDraft(session: PlanSession, snap: SessionSnapshot): FirstDraft {
  const left = useLeft(session.planId);
  const { plan } = snap;
  const writes = session.canWrite;
  return useMemo(() => (writes ? withoutLeft(firstDraft(plan), left) : NOTHING), [plan, left, writes]);
}

/** The same, outside React. */
export function draftNow(session: PlanSession): FirstDraft {
  return session.canWrite ? withoutLeft(firstDraft(session.getSnapshot().plan), leftOf(session.planId)) : NOTHING;
}

function withoutLeft(draft: FirstDraft, left: ReadonlySet<string>): FirstDraft {
  if (left.size === 0) return draft;
  const kept = [...draft].map(([id, lines]) => [id, lines.filter(({ line }) => !left.has(leftKey(id, line)))] as const);
  return new Map(kept.filter(([, lines]) => lines.length > 0));
}
