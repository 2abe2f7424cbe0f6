"use client";
/** The plans that a class can be given, the best for the month first; the keys 1 to 9 choose the first nine. */
import { useEffect } from "react";
import type { MonthSlot } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import { SlotChoice } from "./labelled.tsx";
import type { MonthDesk } from "./month-desk.ts";
import { planOption, SLOT_WORDS } from "./month-words.ts";
import styles from "./panel.module.css";
import { type NamedTry, useTriedPlans } from "./use-tried-plans.ts";

interface ClassPlansProps {
  readonly desk: MonthDesk;
  readonly slot: MonthSlot;
  readonly onPick: (plan: string | null) => void;
}

const LISTED = 9;

export function ClassPlans({ desk, slot, onPick }: ClassPlansProps) {
  const { acts, month, props } = desk;
  const tried = useTriedPlans(desk, month.writes ? slot : undefined);
  const shown = tried.slice(0, LISTED);
  useEffect(() => {
    acts.listPlans({ slot, plans: tried.map(({ plan }) => plan) });
    return () => acts.listPlans(null);
  }, [acts, slot, tried]);
  return (
    <section aria-label="Plans for this class">
      {shown.length > 0 && (
        <ol className={styles.plans}>
          {shown.map((one, i) => (
            <li key={one.plan}>
              <button
                type="button"
                className={styles.pick}
                aria-pressed={slot.plan === one.plan}
                onClick={() => onPick(one.plan)}
              >
                <span className="mono" aria-hidden="true">
                  {i + 1}
                </span>
                <span>{one.title}</span>
                <span className={styles.effect}>{effectWords(one)}</span>
              </button>
            </li>
          ))}
        </ol>
      )}
      <SlotChoice
        label={SLOT_WORDS.plan}
        none={SLOT_WORDS.noPlan}
        value={slot.plan ?? null}
        options={props.plans.map((plan) => [plan.id, planOption(plan)])}
        onChange={onPick}
      />
    </section>
  );
}

/** What it would do to the month's findings. */
function effectWords({ gone, brought }: NamedTry): string {
  const parts = [
    ...(gone.length > 0 ? [`fixes ${plural(gone.length, "finding")}`] : []),
    ...(brought.length > 0 ? [`brings ${plural(brought.length, "finding")}`] : []),
  ];
  return parts.length > 0 ? parts.join(", ") : "changes nothing";
}
