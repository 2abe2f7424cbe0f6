"use client";
/** What changed between any two moments of a plan, or since one of them. */
import { useId, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { useChangesShown } from "#app/_session/changes-shown.ts";
import { usePageActs } from "#app/_session/page-acts.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { momentWords } from "#lib/formats/dates.ts";
import type { ComparePoint } from "#lib/rounds/rounds.ts";
import type { ThenOrProblem } from "./fetch-rounds.ts";
import { PlateChangeList } from "./plate-change-list.tsx";
import styles from "./rounds.module.css";
import { atPointWords, CHANGES, ROUNDS } from "./rounds-words.ts";
import { usePoint } from "./use-rounds.ts";

interface BetweenProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  /** In order of time, at least one. */
  readonly points: readonly ComparePoint[];
  readonly usual: string | null;
}

/** Begins with what is compared on the rail. */
export function Between({ session, snap, points, usual }: BetweenProps) {
  const { point } = useChangesShown(session.changes);
  const { run, show } = usePageActs();
  const [from, setFrom] = useState(point ?? usual ?? points.at(-1)?.id ?? null);
  const [to, setTo] = useState<string | null>(null);
  const before = usePoint(session, from);
  const after = usePoint(session, to);
  const open = (id: string) => {
    run.rail();
    show(id);
  };
  return (
    <section className={styles.between} aria-labelledby="between-title">
      <h3 id="between-title">{ROUNDS.between}</h3>
      <div className={styles.pair}>
        <PointChoice label={ROUNDS.from} points={points} value={from} onChoose={setFrom} />
        <PointChoice label={ROUNDS.to} points={points} value={to} onChoose={setTo} none={ROUNDS.now} />
      </div>
      <Found
        before={before}
        after={to === null ? { ...NOW, plan: snap.plan } : after}
        onOpen={to === null ? open : undefined}
      />
    </section>
  );
}

const NOW = { findings: [], threads: [] };

interface FoundProps {
  readonly before: ThenOrProblem | null;
  readonly after: ThenOrProblem | null;
  readonly onOpen: ((itemId: string) => void) | undefined;
}

function Found({ before, after, onOpen }: FoundProps) {
  if (!before || !after) return <p role="status">{CHANGES.loading}</p>;
  const problem = "problem" in before ? before.problem : "problem" in after ? after.problem : null;
  if (problem !== null) return <p className="problem">{problem}</p>;
  const [was, is] = [before, after].map((one) => ("plan" in one ? one.plan : null));
  return was && is ? <PlateChangeList before={was} after={is} onOpen={onOpen} /> : <p>{CHANGES.noText}</p>;
}

interface PointChoiceProps {
  readonly label: string;
  readonly points: readonly ComparePoint[];
  readonly value: string | null;
  readonly onChoose: (point: string | null) => void;
  /** What null is called; left out where it cannot be chosen. */
  readonly none?: string;
}

function PointChoice({ label, points, value, onChoose, none }: PointChoiceProps) {
  const f = useFormats();
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value ?? ""} onChange={(event) => onChoose(event.target.value || null)}>
        {none !== undefined && <option value="">{none}</option>}
        {points.toReversed().map((point) => (
          <option key={point.id} value={point.id}>
            {atPointWords(point)}, {momentWords(point.at, f)}
          </option>
        ))}
      </select>
    </div>
  );
}
