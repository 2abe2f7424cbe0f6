"use client";
/** The empty classes filled: each with its plan, the next best, and what the month would then find. One step of undo. */
import { useMemo } from "react";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { dayAndTime } from "#lib/formats/dates.ts";
import { changedSinceFill } from "#lib/month/fill/changed-since.ts";
import type { ExplainedSlot } from "#lib/month/fill/explain.ts";
import type { MonthFile } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { classTitle } from "#lib/tide/day-marks.ts";
import { FillSettings } from "./fill-settings.tsx";
import { meanLikeness, outcomeWords } from "./fill-words.ts";
import type { MonthDesk } from "./month-desk.ts";
import styles from "./panel.module.css";
import { type Fill, type ProposedFill, useFill } from "./use-fill.ts";

export function FillPanel({ desk }: { readonly desk: MonthDesk }) {
  const fill = useFill(desk);
  return (
    <div className={styles.form}>
      <ProblemLine say={fill.problem} />
      {fill.waits && <p role="status">{WAITS[fill.waits]}</p>}
      {fill.found &&
        (isNothing(fill.found) ? (
          <NothingFound explained={fill.found.explained} />
        ) : (
          <Found desk={desk} found={fill.found} />
        ))}
      <FillSettings desk={desk} />
      <Again desk={desk} fill={fill} />
    </div>
  );
}

const WAITS: Readonly<Record<NonNullable<Fill["waits"]>, string>> = {
  unsent: "What you wrote is on its way to the server; then the plans are worked out…",
  offline: "The server works the plans out. It begins as soon as this page is connected again.",
  working: "Working the plans out… A full month may take half a minute; you can go on meanwhile.",
};

/** For after others have written, or a wish was added. */
function Again({ desk, fill }: { readonly desk: MonthDesk; readonly fill: Fill }) {
  if (fill.waits) return null;
  const again = () => {
    desk.choose({ proposed: {} });
    fill.again();
  };
  return (
    <p>
      <button type="button" className="button" onClick={again}>
        Work the plans out again
      </button>
    </p>
  );
}

const isNothing = ({ answer, explained }: ProposedFill): boolean =>
  answer.slots.length > 0 && explained.every(({ plan }) => plan === null);

interface FoundProps {
  readonly desk: MonthDesk;
  readonly found: ProposedFill;
}

function Found({ desk, found }: FoundProps) {
  const { month, choice, choose, acts, session } = desk;
  const changed = useMemo(
    () => changedSinceFill(found.slots, choice.proposed, month.file),
    [found, choice, month.file],
  );
  const left = found.explained.filter(({ slot }) => Object.hasOwn(choice.proposed, slot));
  const free = left.filter(({ slot }) => !changed.has(slot));
  const without = (slots: readonly ExplainedSlot[]) => {
    const gone = new Set(slots.map(({ slot }) => slot));
    choose({ proposed: Object.fromEntries(Object.entries(choice.proposed).filter(([slot]) => !gone.has(slot))) });
  };
  const take = (slots: readonly ExplainedSlot[]) => {
    const now = changedSinceFill(found.slots, choice.proposed, session.getSnapshot().file);
    const still = slots.filter(({ slot }) => !now.has(slot));
    if (still.length > 0) acts.fill(Object.fromEntries(still.map(({ slot, plan }) => [slot, plan])));
    without(still);
  };
  return (
    <>
      <Outcome desk={desk} found={found} left={left.length} />
      <div className={styles.acts}>
        <button type="button" className="button button-strong" disabled={free.length === 0} onClick={() => take(free)}>
          {free.length === left.length ? "Take all" : `Take the other ${free.length}`}
        </button>
        <button type="button" className="button" onClick={() => choose({ panel: null, proposed: {} })}>
          Take none
        </button>
      </div>
      <ol className={styles.rows}>
        {left.map((one) => (
          <Proposed key={one.slot} {...{ desk, one }} changed={changed.get(one.slot)} onTake={take} onDrop={without} />
        ))}
      </ol>
      <Empty explained={found.explained} />
    </>
  );
}

interface OutcomeProps extends FoundProps {
  /** How many plans are still proposed. */
  readonly left: number;
}

/** Counted anew as plans are taken or turned down: `shown` is the month with those that are still proposed. */
function Outcome({ desk: { open, shown, choice, slot: slotOf }, found: { answer }, left }: OutcomeProps) {
  const alike = useMemo(() => meanLikeness(shown.look.sums), [shown.look.sums]);
  if (answer.slots.length === 0) return <p>No class is waiting for a plan: all have one, are locked or are over.</p>;
  if (left === 0) return <p className="quiet">Nothing more to put in.</p>;
  const leftOut = answer.slots.filter(
    ({ slot, plan }) => plan !== null && choice.proposed[slot] === undefined && slotOf(slot)?.plan !== plan,
  ).length;
  const counts = { before: open.findings.length, after: shown.look.findings.length };
  const [best, rest] = outcomeWords({ proven: answer.proven, leftOut, alike, ...counts });
  return (
    <p role="status">
      <strong>{best}</strong>
      {rest}
    </p>
  );
}

interface ProposedProps {
  readonly desk: MonthDesk;
  readonly one: ExplainedSlot;
  /** What others changed in this class meanwhile. */
  readonly changed: string | undefined;
  readonly onTake: (slots: readonly ExplainedSlot[]) => void;
  readonly onDrop: (slots: readonly ExplainedSlot[]) => void;
}

function Proposed({ desk, one, changed, onTake, onDrop }: ProposedProps) {
  const { choose, month } = desk;
  return (
    <li onPointerEnter={() => choose({ lit: one.slot })} onPointerLeave={() => choose({ lit: null })}>
      <p>
        {classWords(desk, one.slot)}: <b>{titleOf(month.file, one.plan)}</b>
      </p>
      <NextBest file={month.file} one={one} />
      {changed === undefined ? (
        <button type="button" className="act" onClick={() => onTake([one])}>
          Take this one<span className="visually-hidden">: {one.text}</span>
        </button>
      ) : (
        <p className="notice">Not put in, the class was changed meanwhile. {changed}</p>
      )}
      <button type="button" className="act" onClick={() => onDrop([one])}>
        Not this one<span className="visually-hidden">: {one.text}</span>
      </button>
    </li>
  );
}

/** "Friday 20 March, 18:00, Arms, chest" */
function classWords({ slot: slotOf, month: { file }, formats: f }: MonthDesk, id: string): string {
  const slot = slotOf(id);
  return slot
    ? `${dayAndTime(slot.date, slot.start, f)}, ${classTitle(file, { ...slot, plan: null })}`
    : "A class that is gone";
}

const titleOf = (file: MonthFile, plan: string | null): string =>
  plan === null ? "left empty" : planTitle(own(file.plans, plan)?.title ?? "");

/** The next choices, and how each compares. */
function NextBest({ file, one }: { readonly file: MonthFile; readonly one: ExplainedSlot }) {
  return (
    <ul className={styles.next}>
      {one.others.map(({ plan, words }) => (
        <li key={plan ?? ""}>
          Or {titleOf(file, plan)}: {words}.
        </li>
      ))}
    </ul>
  );
}

/** Every class stays empty: nothing to take, so the reasons stand open. */
function NothingFound({ explained }: { readonly explained: readonly ExplainedSlot[] }) {
  return (
    <>
      <p>
        No plan is put in: none fits, or none makes the month better. Sign more plans, or change what may be used below.
      </p>
      <EmptyClasses explained={explained} />
    </>
  );
}

function EmptyClasses({ explained }: { readonly explained: readonly ExplainedSlot[] }) {
  return (
    <ul className={styles.rows}>
      {explained.map(({ slot, text }) => (
        <li key={slot}>{text}</li>
      ))}
    </ul>
  );
}

/** Classes for which no plan is better than a fitting one. */
function Empty({ explained }: { readonly explained: readonly ExplainedSlot[] }) {
  const empty = explained.filter(({ plan }) => plan === null);
  if (empty.length === 0) return null;
  return (
    <details>
      <summary>{plural(empty.length, "class stays", "classes stay")} empty</summary>
      <EmptyClasses explained={empty} />
    </details>
  );
}
