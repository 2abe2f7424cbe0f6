"use client";
/** The empty classes filled: each with its plan, the next best, and what the month would then find. One step of undo. */
import { useEffect, useState } from "react";
import { dayWords } from "#lib/calendar/day-words.ts";
import type { FillAnswer, FilledSlot } from "#lib/month/fill/fill-types.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { classTitle } from "#lib/tide/day-marks.ts";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";

export function FillPanel({ desk }: { readonly desk: MonthDesk }) {
  const answer = useFill(desk);
  const { acts, choose, choice } = desk;
  if (!answer) return <p role="status">Working the plans out…</p>;
  const left = answer.slots.filter(({ slot }) => Object.hasOwn(choice.proposed, slot));
  const take = (slots: readonly FilledSlot[]) => {
    acts.fill(Object.fromEntries(slots.map(({ slot, plan }) => [slot, plan])));
    const gone = new Set(slots.map(({ slot }) => slot));
    choose({ proposed: Object.fromEntries(Object.entries(choice.proposed).filter(([slot]) => !gone.has(slot))) });
  };
  return (
    <div className={styles.form}>
      <p>
        {answer.proven ? "The best there is" : "The best found"}: {plural(answer.gone.length, "finding")} mended,{" "}
        {answer.new.length} new.
      </p>
      <ol className={styles.rows}>
        {left.map((one) => (
          <Proposed key={one.slot} desk={desk} one={one} answer={answer} onTake={() => take([one])} />
        ))}
      </ol>
      {left.length === 0 && <p className="quiet">Nothing more to put in.</p>}
      <div className={styles.acts}>
        <button type="button" className="button button-strong" disabled={left.length === 0} onClick={() => take(left)}>
          Take all
        </button>
        <button type="button" className="button" onClick={() => choose({ panel: null, proposed: {} })}>
          Take none
        </button>
      </div>
    </div>
  );
}

/** Worked out once for the month as it is when the panel opens; what it proposes is drawn in the sheet. */
function useFill({ month: { file }, choose }: MonthDesk): FillAnswer | null {
  const [answer, setAnswer] = useState<FillAnswer | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is proposed stays while others write on
  useEffect(() => {
    let here = true;
    // After the panel is drawn: the search keeps the page for a moment.
    const timer = setTimeout(async () => {
      const { fillMonth } = await import("#lib/month/fill/fill.ts");
      if (!here) return;
      const found = fillMonth(file);
      setAnswer(found);
      choose({
        proposed: Object.fromEntries(found.slots.flatMap(({ slot, plan }) => (plan === null ? [] : [[slot, plan]]))),
      });
    }, 50);
    return () => {
      here = false;
      clearTimeout(timer);
    };
  }, []);
  return answer;
}

interface ProposedProps {
  readonly desk: MonthDesk;
  readonly one: FilledSlot;
  readonly answer: FillAnswer;
  readonly onTake: () => void;
}

function Proposed({ desk, one, answer, onTake }: ProposedProps) {
  const { month, choice, choose } = desk;
  const slot = desk.slot(one.slot);
  if (!slot) return null;
  const title = (plan: string | null) =>
    plan === null ? "left empty" : planTitle(own(month.file.plans, plan)?.title ?? "");
  const [next] = one.others;
  const drop = () => {
    const { [one.slot]: _, ...rest } = choice.proposed;
    choose({ proposed: rest });
  };
  return (
    <li onPointerEnter={() => choose({ lit: slot.id })} onPointerLeave={() => choose({ lit: null })}>
      <p>
        {dayWords(slot.date)}, {slot.start}, {classTitle(month.file, { ...slot, plan: null })}: <b>{title(one.plan)}</b>
        .{next && ` Next best ${title(next.plan)}, ${moreWords(next.cost - answer.after)}.`}
      </p>
      <button type="button" className="act" onClick={onTake}>
        Take this one
      </button>
      <button type="button" className="act" onClick={drop}>
        Not this one
      </button>
    </li>
  );
}

const moreWords = (cost: number): string => (cost < 0.05 ? "as good" : `+${cost.toFixed(1)}`);
