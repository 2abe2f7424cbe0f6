"use client";
/** One rehearsal beside the plan as it is now, worked out anew whenever the plan changes; what is ticked can be taken. */
import { useMemo, useState } from "react";
import { Changed } from "#app/_fit/changed.tsx";
import { useFresh } from "#app/_fit/use-fresh.ts";
import type { PlanSession } from "#app/_plan/session.ts";
import { useSnapshot } from "#app/_plan/use-session.ts";
import { classClock } from "#lib/clock/clock.ts";
import { freeWords, ofLength } from "#lib/clock/length-words.ts";
import {
  type Chosen,
  type RehearsalTake,
  rehearsalTake,
  suggestedChoice,
  takenChanges,
  withTaken,
} from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import { clockTime, plural } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import styles from "./rehearsal.module.css";
import { ChangeTable, LineTable } from "./rehearsal-tables.tsx";
import { shownIn, takenWords, takeRehearsal, whyNotTaken } from "./take-rehearsal.ts";

interface Props {
  readonly session: PlanSession;
  readonly rehearsed: Rehearsed;
  onTaken(): void;
}

export function RehearsalPreview({ session, rehearsed, onTaken }: Props) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const take = useMemo(() => rehearsalTake(plan, rehearsed), [plan, rehearsed]);
  const shown = shownIn(take);
  const fresh = useFresh(session, snap, shown);
  const [chosen, setChosen] = useState<Chosen>(() => suggestedChoice(take));
  const why = whyNotTaken(snap.state.state, session.canWrite);
  const count = takenChanges(take, chosen).length;
  const rate = chosen.rate && take.rate !== null && take.rate.to !== take.rate.now;
  const choose = (item: string, on: boolean) => {
    const items = new Set(chosen.items);
    if (on) items.add(item);
    else items.delete(item);
    setChosen({ ...chosen, items });
  };
  return (
    <div className={styles.preview}>
      <Changed fresh={fresh} what="what is shown below is fresh" />
      <ChangeTable plan={plan} take={take} chosen={chosen} onChoose={choose} />
      <Rate take={take} on={chosen.rate} onChoose={(on) => setChosen({ ...chosen, rate: on })} />
      <LineTable plan={plan} lines={rehearsed.lines} />
      <div className={styles.foot}>
        <p>{totalWords(plan, withTaken(plan, take, chosen))}</p>
        {snap.state.state === "signed-off" && why === null && (
          <p className="quiet small">
            This plan is signed off: taking puts it in writing again, and the signed edition stays as it is.
          </p>
        )}
        {why !== null ? (
          <p className="notice">{why}</p>
        ) : (
          <button
            type="button"
            className="button button-strong"
            disabled={count === 0 && !rate}
            onClick={() => takeRehearsal(session, rehearsed, chosen, shown) && onTaken()}
          >
            {count === 0 && !rate ? "Nothing chosen" : `Take ${takenWords(count, rate)}`}
          </button>
        )}
        <p className="quiet small">Taken as one step that can be undone. No work is made shorter or longer by it.</p>
      </div>
    </div>
  );
}

function totalWords(before: Plan, after: Plan): string {
  const [was, is] = [classClock(before).total, classClock(after).total];
  const then = `${ofLength(is, after.lengthSeconds)}, ${freeWords(is, after.lengthSeconds)}`;
  return was === is ? `The class stays ${then}.` : `The class would be ${then}; now it is ${clockTime(was)}.`;
}

interface RateProps {
  readonly take: RehearsalTake;
  readonly on: boolean;
  onChoose(on: boolean): void;
}

function Rate({ take: { rate, strangeLines }, on, onChoose }: RateProps) {
  const strange =
    strangeLines > 0 ? ` ${plural(strangeLines, "line was", "lines were")} tapped too soon or too late to count.` : "";
  if (!rate) return <p>Too little was said to know how fast you speak.{strange}</p>;
  const over = `over ${plural(rate.lines, "line")} and ${plural(rate.syllables, "syllable")}`;
  if (rate.to === rate.now) {
    return (
      <p>
        You speak as the plan counts: {rate.now} syllables a second, {over}.{strange}
      </p>
    );
  }
  return (
    <div>
      <label className="check">
        <input type="checkbox" checked={on} onChange={(event) => onChoose(event.target.checked)} />
        <span>
          Count with your speaking rate: {rate.to} syllables a second instead of {rate.now}, {over}.
        </span>
      </label>
      {strange && <p className="quiet small">{strange.trim()}</p>}
    </div>
  );
}
