/** One class on a day's rail: as tall as it is long, with its time, theme, coach, room and what is still open. */

import type { CSSProperties } from "react";
import type { Slot } from "#lib/programme/layout.ts";
import type { MonthProblem, MonthProblemKind } from "#lib/programme/problems.ts";
import styles from "./month.module.css";
import type { MonthPageProps, MonthSnapshot } from "./month-types.ts";
import { openWords, SLOT_WORDS, slotPlanWords } from "./month-words.ts";

const CLASHES: readonly MonthProblemKind[] = ["coach-clash", "room-clash", "plan-too-long"];

interface SlotItemProps {
  readonly slot: Slot;
  readonly month: MonthSnapshot;
  readonly props: MonthPageProps;
  readonly onOpen: () => void;
}

export function SlotItem({ slot, month, props, onOpen }: SlotItemProps) {
  const problems = month.problems.get(slot.id) ?? [];
  const plan = slot.planId === null ? undefined : month.plans.get(slot.planId);
  const coach = props.people.find((person) => person.id === slot.coachId)?.name.split(" ")[0];
  const room = props.rooms.find((other) => other.id === slot.roomId)?.name;
  return (
    <button
      type="button"
      className={styles.slot}
      style={lengthStyle(slot.minutes)}
      data-open={weight(problems)}
      onClick={onOpen}
    >
      <span className={styles.when}>
        {slot.time} <span className={styles.minutes}>{slot.minutes} min</span>
      </span>
      <span className={styles.theme}>{slot.theme || SLOT_WORDS.noTheme}</span>
      <span className={styles.who}>
        {coach ?? SLOT_WORDS.noCoach}, {room ?? SLOT_WORDS.noRoom}
      </span>
      {plan && problems.length === 0 ? <span className={styles.signed}>{slotPlanWords(plan)}</span> : null}
      {problems.length > 0 && <span className={styles.open}>{openWords(problems)}</span>}
    </button>
  );
}

function weight(problems: readonly MonthProblem[]): "must" | "look" | undefined {
  if (problems.some((problem) => CLASHES.includes(problem.kind))) return "must";
  return problems.length > 0 ? "look" : undefined;
}

/** The bar beside a class is as long as the class. */
function lengthStyle(minutes: number): CSSProperties & { "--length": string } {
  return { "--length": `${Math.min(180, minutes) * 1.4}px` };
}
