"use client";
/** The chosen finding in one sentence, why it is one, and what would mend it. */
import Link from "next/link";
import { useMemo } from "react";
import { findingSentence } from "#lib/tide/finding-sentence.ts";
import styles from "./month.module.css";
import type { MonthDesk } from "./month-desk.ts";
import { useTriedPlans } from "./use-tried-plans.ts";

export function FindingCorner({ desk }: { readonly desk: MonthDesk }) {
  const { chosen, shown, choice, choose, formats } = desk;
  const sentence = useMemo(() => {
    const slots = new Map(shown.look.slots.map(({ slot }) => [slot.id, slot]));
    const place = { formats, month: shown.file, regulars: choice.regulars };
    return findingSentence(chosen, { ...place, slot: (id) => slots.get(id) });
  }, [chosen, shown, choice.regulars, formats]);
  const [first] = chosen;
  if (!first) return null;
  return (
    <section className={styles.corner} aria-label="The chosen finding">
      <p>
        <b>{sentence.when}</b> {sentence.words}
      </p>
      <p className={styles.cornerActs}>
        <FindingAct desk={desk} />
        <Link href={`/rules/month/${first.rule}`}>Why</Link>
        {desk.props.may.sign && first.level === "look" && (
          <button
            type="button"
            className="text-button text-button-low"
            onClick={() => choose({ panel: { kind: "accept", findings: chosen.map(({ id }) => id) } })}
          >
            Accept, say why
          </button>
        )}
      </p>
      {shown.look.findings.length > chosen.length && (
        <button
          type="button"
          className={`text-button text-button-low ${styles.cornerNext}`}
          onClick={() => choose({ finding: findingAfter(desk) })}
        >
          Next
        </button>
      )}
    </section>
  );
}

/** The finding after the chosen ones, the first after the last. */
export function findingAfter({ chosen, shown: { look } }: Pick<MonthDesk, "chosen" | "shown">): string | null {
  const ids = look.findings.map(({ id }) => id);
  const seen = new Set(chosen.map(({ id }) => id));
  const last = Math.max(-1, ...ids.map((id, i) => (seen.has(id) ? i : -1)));
  return [...ids.slice(last + 1), ...ids].find((id) => !seen.has(id)) ?? null;
}

/** Rules that another plan in the class can satisfy. */
const BY_PLAN = new Set([
  ...["no-plan", "unsigned-plan", "plan-unknown", "plan-too-long", "other-equipment", "short-recovery"],
  ...["heavy-twice-a-day", "too-alike", "theme-not-kept", "little-variety", "week-rises-much"],
]);

/** The one act that mends it: a plan that takes it away and brings nothing new; else its class is opened. */
function FindingAct({ desk }: { readonly desk: MonthDesk }) {
  const { chosen, choose, acts, month } = desk;
  const [first] = chosen;
  const slot = desk.slot(first?.slots.at(-1) ?? "");
  const tried = useTriedPlans(desk, first && BY_PLAN.has(first.rule) ? slot : undefined);
  if (!first || !slot) return null;
  const best = tried.find(({ gone, brought }) => brought.length === 0 && gone.some(({ id }) => id === first.id));
  const open = (
    <button
      type="button"
      className="text-button"
      onClick={() => choose({ panel: { kind: "class", slot: slot.id }, at: { date: slot.date, slot: slot.id } })}
    >
      Open the class
    </button>
  );
  if (!best || !month.writes || slot.locked) return open;
  return (
    <>
      <button type="button" className="text-button text-button-low" onClick={() => acts.putPlan(slot, best.plan)}>
        <b>Try {best.title} here</b>
      </button>
      {open}
    </>
  );
}
