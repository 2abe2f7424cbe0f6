"use client";
/** A class, opened: what is to mend in it, its plan, and all its fields, which others see change as one types. */
import Link from "next/link";
import { useState } from "react";
import type { MonthSlot } from "#lib/month/types.ts";
import { sentenceCase } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { occurrenceOf } from "#lib/programme/layout.ts";
import { slotTakenOutBy } from "#lib/programme/read.ts";
import type { SlotChange } from "#lib/programme/write.ts";
import { asItsLine } from "#lib/programme/write.ts";
import { changeLine, changeLineFrom, takeOutLine } from "#lib/programme/write-pattern.ts";
import { ClassFields } from "./class-fields.tsx";
import { ClassNote } from "./class-note.tsx";
import { GoneClass } from "./gone-class.tsx";
import type { MonthDesk } from "./month-desk.ts";
import { slotPlanWords } from "./month-words.ts";
import styles from "./panel.module.css";
import { ClassPlans } from "./plan-list.tsx";

/** How far a change of a class of the pattern reaches. */
type Reach = "this" | "later" | "all";
const REACHES: readonly (readonly [Reach, string])[] = [
  ["this", "this one"],
  ["later", "this and later"],
  ["all", "all of the line"],
];

export function MonthClassPanel({ desk, slotId }: { readonly desk: MonthDesk; readonly slotId: string }) {
  const slot = desk.slot(slotId);
  return slot ? <OpenClass desk={desk} slot={slot} /> : <GoneClass desk={desk} slotId={slotId} />;
}

function OpenClass({ desk, slot }: { readonly desk: MonthDesk; readonly slot: MonthSlot }) {
  const { acts, month } = desk;
  const line = lineOf(desk, slot);
  const [reach, setReach] = useState<Reach>("this");
  const change = (part: SlotChange) => {
    const { date, ...values } = part;
    if (reach === "this" || !line || date !== undefined) return acts.change(slot, part);
    if (reach === "later")
      acts.run((w) => changeLineFrom(w, slot.id, values), "Changed in this class and the later ones.");
    else acts.run((w) => changeLine(w, line, values), "Changed in all classes of the line.");
  };
  return (
    <div className={styles.form} data-live="">
      {slot.out && (
        <p role="alert" className="notice">
          {outWords(desk, slot)}
        </p>
      )}
      {desk.since.marks.has(slot.id) && <p className="quiet">{sentenceCase(desk.since.marks.get(slot.id) ?? "")}.</p>}
      <Findings desk={desk} slot={slot} />
      <PlanOf desk={desk} slot={slot} />
      {line && month.writes && <ReachChoice reach={reach} onChoose={setReach} />}
      <ClassPlans desk={desk} slot={slot} onPick={(plan) => change({ plan })} />
      <ClassFields desk={desk} slot={slot} onChange={change} />
      <ClassNote desk={desk} slot={slot} />
      {month.writes && <Acts desk={desk} slot={slot} line={line} />}
    </div>
  );
}

/** The line of the pattern that gives this class; undefined for a single one. */
function lineOf({ month }: MonthDesk, slot: MonthSlot): string | undefined {
  const named = occurrenceOf(slot.id);
  return named && month.state.pattern.some(({ id }) => id === named.line) ? named.line : undefined;
}

/** Who called the class off: it stays in the month, struck through. */
function outWords({ session }: MonthDesk, { id }: MonthSlot): string {
  const by = slotTakenOutBy(session.doc, id);
  return `${by === undefined ? "Somebody" : session.names.who(by)} took this class out of the month. It can be put back.`;
}

function Findings({ desk: { open }, slot }: { readonly desk: MonthDesk; readonly slot: MonthSlot }) {
  const own = open.findings.filter(({ slots }) => slots.includes(slot.id));
  if (own.length === 0) return null;
  return (
    <ul className={styles.findings}>
      {own.map(({ id, rule, level, message }) => (
        <li key={id} className={level === "must" ? "problem" : "notice"}>
          {message} <Link href={`/rules/month/${rule}`}>Why</Link>
        </li>
      ))}
    </ul>
  );
}

/** Leads to the plan, or for those who may not read it to the print sheet of its edition. */
function PlanOf({ desk: { month, props }, slot }: { readonly desk: MonthDesk; readonly slot: MonthSlot }) {
  const plan = slot.plan == null ? undefined : month.plans.get(slot.plan);
  const title = planTitle(plan?.title ?? own(month.file.plans, slot.plan ?? "")?.title ?? "");
  if (slot.plan == null) return <p className="quiet">No plan yet.</p>;
  if (!plan) return <p className="quiet">A plan that is not shown to you.</p>;
  const mayRead = props.plans.some((other) => other.id === plan.id);
  return (
    <p className={styles.plan}>
      {mayRead ? (
        <Link className="button" href={`/plans/${plan.id}`}>
          Open {title}
        </Link>
      ) : plan.edition > 0 ? (
        <a className="button" href={`/editions/${plan.id}/${plan.edition}/print`}>
          Print sheet of {title}
        </a>
      ) : (
        <strong>{title}</strong>
      )}
      <span className="quiet">
        {slotPlanWords(plan)}, {plan.ownerName}
      </span>
    </p>
  );
}

function ReachChoice({ reach, onChoose }: { readonly reach: Reach; readonly onChoose: (reach: Reach) => void }) {
  return (
    <fieldset>
      <legend>A change counts for</legend>
      <div className="options">
        {REACHES.map(([value, words]) => (
          <label key={value} data-on={reach === value ? "" : undefined}>
            <input type="radio" name="reach" checked={reach === value} onChange={() => onChoose(value)} />
            {words}
          </label>
        ))}
      </div>
      {reach !== "this" && (
        <p className="quiet small">
          In this month. Months that somebody has opened already keep their own pattern; others begin with this one.
        </p>
      )}
    </fieldset>
  );
}

interface ActsProps {
  readonly desk: MonthDesk;
  readonly slot: MonthSlot;
  readonly line: string | undefined;
}

/** Long because: all that can be done with a class stands in one row. */
function Acts({ desk: { acts, choose, month }, slot, line }: ActsProps) {
  const changed = line !== undefined && month.state.slots.some(({ id }) => id === slot.id);
  const now = { at: Date.now(), signedAt: month.signed?.at ?? null };
  return (
    <div className={styles.acts}>
      <button
        type="button"
        className="button"
        onClick={() =>
          choose({
            panel: null,
            moving: { slot: slot.id, date: slot.date, start: slot.start },
            at: { date: slot.date, slot: slot.id },
          })
        }
      >
        Move with the arrows
      </button>
      {changed && (
        <button
          type="button"
          className="button"
          onClick={() => acts.run((w) => asItsLine(w, slot.id), "As its line again.")}
        >
          As its line again
        </button>
      )}
      {line && (
        <button
          type="button"
          className="button"
          onClick={() => acts.run((w) => takeOutLine(w, line, slot.date, now), "Taken out from this day on.")}
        >
          Take out this and later
        </button>
      )}
      {slot.out ? (
        <button type="button" className="button button-strong" onClick={() => acts.putBack(slot)}>
          Put back
        </button>
      ) : (
        <button type="button" className="button button-must" onClick={() => acts.takeOut(slot)}>
          Take out of the month
        </button>
      )}
    </div>
  );
}
