"use client";
/** Plans for the empty classes, asked of the server, which works them out and proves them on a thread. */
import { useCallback, useEffect, useState } from "react";
import type { ExplainedSlot } from "#lib/month/fill/explain.ts";
import type { FillAnswer } from "#lib/month/fill/fill-types.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { send } from "../_parts/send.ts";
import type { MonthDesk } from "./month-desk.ts";

export interface ProposedFill {
  readonly answer: FillAnswer;
  readonly explained: readonly ExplainedSlot[];
  /** The classes as they were filled. */
  readonly slots: readonly MonthSlot[];
}

export interface Fill {
  readonly found: ProposedFill | null;
  /** Why there is none. */
  readonly problem: string | null;
  /** `unsent`: what was written here is not on the server yet. */
  readonly waits: "unsent" | "offline" | "working" | null;
  again(): void;
}

/** Asked when the panel opens, and again when that is asked for: what is proposed stays while others write on. */
export function useFill({ month: { saveState }, props: { month }, choose }: MonthDesk): Fill {
  const [asked, setAsked] = useState(1);
  const [got, setGot] = useState<{ readonly asked: number; found: ProposedFill | null; problem: string | null } | null>(
    null,
  );
  const done = got?.asked === asked;
  const saved = saveState === "saved";
  // What is being worked out goes on while somebody writes: only its beginning waits for what was written here.
  const [begun, setBegun] = useState(0);
  useEffect(() => {
    if (saved) setBegun(asked);
  }, [saved, asked]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `choose` is another function each time
  useEffect(() => {
    if (begun === 0) return;
    const stop = new AbortController();
    const { signal } = stop;
    void send<ProposedFill>("POST", `/api/programme/${month}/fill`, undefined, { signal }).then((sent) => {
      if (signal.aborted) return;
      setGot({ asked: begun, found: sent.ok ? sent.value : null, problem: sent.ok ? null : sent.message });
      if (sent.ok) choose({ proposed: proposedBy(sent.value) });
    });
    return () => stop.abort();
  }, [begun, month]);
  const again = useCallback(() => setAsked((n) => n + 1), []);
  const waits = done ? null : begun === asked ? "working" : saveState === "offline" ? "offline" : "unsent";
  return { found: done ? (got?.found ?? null) : null, problem: done ? (got?.problem ?? null) : null, waits, again };
}

const proposedBy = ({ answer }: ProposedFill): Record<string, string | null> =>
  Object.fromEntries(answer.slots.flatMap(({ slot, plan }) => (plan === null ? [] : [[slot, plan]])));
