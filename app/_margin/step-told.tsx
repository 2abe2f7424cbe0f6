"use client";
/** Tells this person what others do to the plan's state while they have it open, and what their own change does to it. */
import { useEffect, useRef } from "react";
import type { Transaction } from "yjs";
import { useAccepted } from "#app/_session/accepted-now.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { momentWords } from "#lib/formats/dates.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { tellLine } from "../_session/typed/told-notices.tsx";
import { PLACE } from "../_session/typed/typed-words.ts";
import { againWords } from "./accept-words.ts";
import { CHECK_BROKE } from "./margin-words.ts";
import { stepTold, writtenOn } from "./step-words.ts";

export function StepTold({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const before = useRef(state);
  useEffect(() => {
    const hasNote = session.typed.wordsAt(PLACE.returning).trim() !== "";
    const line = stepTold(before.current, state, { id: session.me.id, hasNote }, (at) =>
      momentWords(at, session.formats),
    );
    before.current = state;
    if (line) tellLine(session, line);
  }, [session, state]);
  const { state: at, edition } = state;
  useEffect(() => {
    if (at !== "signed-off") return;
    const hear = ({ local, changed }: Transaction) => {
      if (local && changed.size > 0 && session.canWrite) tellLine(session, writtenOn(edition));
    };
    session.doc.on("afterTransaction", hear);
    return () => session.doc.off("afterTransaction", hear);
  }, [session, at, edition]);
  useStandsAgain(session);
  return null;
}

/** Says of a finding that was accepted a moment ago that it stands again. */
function useStandsAgain(session: PlanSession): void {
  const { of, again } = useAccepted(useSnapshot(session));
  const held = useRef<ReadonlySet<string>>(new Set());
  useEffect(() => {
    const lost = [...again].filter(([, { id }]) => held.current.has(id));
    held.current = new Set([...of.values()].map(({ id }) => id));
    for (const [{ rule }, acceptance] of lost) session.say(againWords(ruleTitle(rule) ?? CHECK_BROKE, acceptance));
  }, [session, of, again]);
}
