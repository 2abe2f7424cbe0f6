"use client";
/** What the standard as typed would change in the team's plans, asked of the server a moment after the last key. */
import { useEffect, useState } from "react";
import { send } from "#app/_shell/send.ts";
import { agree, plural } from "#lib/plan/format.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import type { LevelCounts, StandardTrial } from "#server/studio/try-standard.ts";

const AFTER_LAST_KEY_MS = 400;

interface TrialProps {
  readonly url: string;
  /** Null while a field holds what the rule cannot take. */
  readonly standard: StudioStandard | null;
  readonly kept: StudioStandard | null;
}

export function TrialWords({ url, standard, kept }: TrialProps) {
  const [words, setWords] = useState("");
  const wanted = standard === null || sameData(standard, kept ?? {}) ? "" : JSON.stringify(standard);
  useEffect(() => {
    if (wanted === "") return setWords("");
    let stale = false;
    const timer = setTimeout(async () => {
      const sent = await send<StandardTrial>("POST", `${url}/trial`, JSON.parse(wanted));
      if (!stale) setWords(sent.ok ? trialWords(sent.value) : sent.message);
    }, AFTER_LAST_KEY_MS);
    return () => {
      stale = true;
      clearTimeout(timer);
    };
  }, [wanted, url]);
  return <p role="status">{words}</p>;
}

/** "In the team's 6 plans this rule finds 3 now and would find 1; 2 must fix would be none." */
export function trialWords({ plans, before, after }: StandardTrial): string {
  if (plans === 0) return "There is no team plan to try it on.";
  const where = `In ${agree(plans, "the team's one plan", `the team's ${plans} plans`)}`;
  const [now, then] = [countsWords(before), countsWords(after)];
  return now === then ? `${where} nothing would change: ${now}.` : `${where}: ${now} now, ${then} with this.`;
}

function countsWords({ must, look, info }: LevelCounts): string {
  const all = must + look + info;
  if (all === 0) return "no finding";
  const parts = [
    must > 0 ? `${must} must fix` : "",
    look > 0 ? `${look} look again` : "",
    info > 0 ? `${info} for information` : "",
  ].filter(Boolean);
  return `${plural(all, "finding")} (${parts.join(", ")})`;
}
