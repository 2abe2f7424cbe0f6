"use client";
/** One rehearsal beside the plan as it is now, worked out again whenever the plan changes; what is ticked can be taken. */
import { useMemo, useState } from "react";
import { Changed } from "#app/_parts/changed.tsx";
import { asShown, TAKEN_IN_ONE_STEP, TIMES_UP_TO_DATE } from "#app/_session/previews.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useFresh } from "#app/_session/use-fresh.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import {
  type Chosen,
  type RehearsalTake,
  rehearsalTake,
  suggestedChoice,
  takenChanges,
  withTaken,
} from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import styles from "./rehearsal.module.css";
import { ChangeTable, LineTable } from "./rehearsal-tables.tsx";
import {
  BACK_IN_WRITING,
  measuredRateWords,
  rateOfferWords,
  strangeLinesWords,
  takenWords,
  totalWords,
  WORK_STAYS,
  whyNotTaken,
} from "./rehearsals-words.ts";
import { takeRehearsal } from "./take-rehearsal.ts";

interface Props {
  readonly session: PlanSession;
  readonly rehearsed: Rehearsed;
  onTaken(): void;
}

export function RehearsalPreview({ session, rehearsed, onTaken }: Props) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const take = useMemo(() => rehearsalTake(plan, rehearsed), [plan, rehearsed]);
  const shown = asShown(take);
  const fresh = useFresh(session, snap, shown);
  const [chosen, setChosen] = useState<Chosen>(() => suggestedChoice(take));
  const choose = (item: string, on: boolean) => {
    const items = new Set(chosen.items);
    if (on) items.add(item);
    else items.delete(item);
    setChosen({ ...chosen, items });
  };
  return (
    <div className={styles.preview}>
      <Changed fresh={fresh} what={TIMES_UP_TO_DATE} />
      <ChangeTable plan={plan} take={take} chosen={chosen} onChoose={choose} />
      <Rate take={take} on={chosen.rate} onChoose={(on) => setChosen({ ...chosen, rate: on })} />
      <LineTable plan={plan} lines={rehearsed.lines} />
      <Foot
        session={session}
        take={take}
        chosen={chosen}
        onTake={() => takeRehearsal(session, rehearsed, chosen, shown) && onTaken()}
      />
    </div>
  );
}

interface FootProps {
  readonly session: PlanSession;
  readonly take: RehearsalTake;
  readonly chosen: Chosen;
  onTake(): void;
}

/** What the class comes to with the chosen times, and the button that takes them or why nobody can. */
function Foot({ session, take, chosen, onTake }: FootProps) {
  const { plan, state } = useSnapshot(session);
  const why = whyNotTaken(state.state, session.canWrite);
  const count = takenChanges(take, chosen).length;
  const rate = chosen.rate && take.rate !== null && take.rate.to !== take.rate.now;
  const nothing = count === 0 && !rate;
  return (
    <div className={styles.foot}>
      <p>{totalWords(plan, withTaken(plan, take, chosen))}</p>
      {state.state === "signed-off" && why === null && <p className="quiet small">{BACK_IN_WRITING}</p>}
      {why !== null ? (
        <p className="notice">{why}</p>
      ) : (
        <button type="button" className="button button-strong" disabled={nothing} onClick={onTake}>
          {nothing ? "Nothing chosen" : `Take ${takenWords(count, rate)}`}
        </button>
      )}
      <p className="quiet small">
        {TAKEN_IN_ONE_STEP} {WORK_STAYS}
      </p>
    </div>
  );
}

interface RateProps {
  readonly take: RehearsalTake;
  readonly on: boolean;
  onChoose(on: boolean): void;
}

function Rate({ take, on, onChoose }: RateProps) {
  const { rate } = take;
  const strange = strangeLinesWords(take.strangeLines);
  if (!rate || rate.to === rate.now) return <p>{`${measuredRateWords(take)} ${strange}`.trim()}</p>;
  return (
    <div>
      <label className="check">
        <input type="checkbox" checked={on} onChange={(event) => onChoose(event.target.checked)} />
        <span>{rateOfferWords(rate)}</span>
      </label>
      {strange && <p className="quiet small">{strange}</p>}
    </div>
  );
}
