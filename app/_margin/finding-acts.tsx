"use client";
/** What can be done about a finding: fix it, go to its items, read its rule, comment on it, and, for a lead, accept it. */
import { useRef, useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { PLACE } from "#app/_session/typed/typed-words.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { FixAct } from "./fix-act.tsx";
import { JumpLinks } from "./jump-links.tsx";
import { lateAcceptForm } from "./late-accept.ts";
import styles from "./margin.module.css";
import { ACCEPT_AS_IT_IS, COMMENT_ON_FINDING } from "./margin-words.ts";
import { NewThread } from "./new-thread.tsx";
import { RuleLink } from "./rule-link.tsx";
import { goOnFrom } from "./show-slip.ts";

interface ActsProps {
  readonly session: PlanSession;
  readonly finding: Finding;
  readonly from: string | null;
  /** There is nothing to mend or accept any more: only words that were begun are finished. */
  readonly isGone: boolean;
}

export function FindingActs({ session, finding, from, isGone }: ActsProps) {
  const { rights } = useSnapshot(session);
  const { rule, key, items } = finding;
  const acts = useRef<HTMLDivElement>(null);
  // With the words, its slip goes too.
  const onLeft = isGone ? () => goOnFrom(acts.current?.closest("article") ?? null) : undefined;
  const accepting = key !== undefined && session.typed.at(PLACE.accept(key)) !== undefined;
  return (
    <div ref={acts} className={styles.slipActs}>
      {!isGone && <FixAct session={session} finding={finding} />}
      <JumpLinks ids={items} from={from} />
      <RuleLink finding={finding} />
      {rights.comments && key !== undefined && (
        <NewThread
          session={session}
          anchor={{ kind: "finding", rule, itemIds: items, key }}
          at={{ place: PLACE.finding(key), items, finding }}
          onLeft={onLeft}
          words={COMMENT_ON_FINDING}
          place={{ ruleId: rule }}
        />
      )}
      {(!isGone || accepting) && finding.level === "look" && key !== undefined && session.me.roles.includes("lead") && (
        <Accept session={session} finding={finding} />
      )}
    </div>
  );
}

function Accept({ session, finding }: Pick<ActsProps, "session" | "finding">) {
  const [open, setOpen] = useState(() => session.typed.at(PLACE.accept(finding.key ?? "")) !== undefined);
  const button = useRef<HTMLButtonElement>(null);
  const form = useRef<HTMLDivElement>(null);
  const onLeave = () => {
    setOpen(false);
    // Once it is accepted the button is gone, and its slip has the focus.
    const slip = form.current?.closest<HTMLElement>("article");
    requestAnimationFrame(() => (button.current ?? slip)?.focus());
  };
  return (
    <>
      {!open && (
        <button
          ref={button}
          type="button"
          className="text-button text-button-low small"
          aria-expanded={false}
          onClick={() => setOpen(true)}
        >
          {ACCEPT_AS_IT_IS}
        </button>
      )}
      {open && (
        <div ref={form} className={styles.writes}>
          <LatePart part={lateAcceptForm} props={{ session, finding, onLeave }} />
        </div>
      )}
    </>
  );
}
