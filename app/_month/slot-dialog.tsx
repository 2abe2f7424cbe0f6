"use client";
/**
 * A class of the programme, opened. A class that is there changes with each field, and others see it at once; a new one is
 * added when its form is sent.
 */
import Link from "next/link";
import { type FormEvent, useState } from "react";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { takeOutSlot } from "#lib/programme/write.ts";
import { Dialog } from "../_parts/dialog.tsx";
import { newId } from "../_parts/new-id.ts";
import { GoneSlot } from "./gone-slot.tsx";
import styles from "./month.module.css";
import type { MonthSession } from "./month-session.ts";
import type { MonthPageProps, MonthSnapshot, SlotDialogSubject } from "./month-types.ts";
import { dayWords, slotName, slotPlanWords } from "./month-words.ts";
import { SlotFields } from "./slot-fields.tsx";
import { addShownSlot, writeShownSlot } from "./write-shown-slot.ts";

interface SlotDialogProps {
  readonly session: MonthSession;
  readonly month: MonthSnapshot;
  readonly props: MonthPageProps;
  readonly asked: NonNullable<SlotDialogSubject>;
  readonly onClose: () => void;
}

export function SlotDialog(dialog: SlotDialogProps) {
  const { asked } = dialog;
  if ("date" in asked) return <NewSlot {...dialog} date={asked.date} />;
  return <AskedSlot key={asked.slotId} {...dialog} slotId={asked.slotId} />;
}

/** One dialog for a class that is there and for one that was taken out meanwhile, so that the focus stays in it. */
function AskedSlot({ slotId, ...dialog }: SlotDialogProps & { readonly slotId: string }) {
  const { session, month, onClose } = dialog;
  const slot = month.slots.find((other) => other.id === slotId);
  const known = slot ?? month.deleted.find((gone) => gone.slot.id === slotId)?.slot;
  const title = known ? `${known.theme || "Class"}, ${dayWords(known.date)}` : "Taken out of the month";
  return (
    <Dialog title={title} onClose={onClose}>
      {slot ? <OpenSlot {...dialog} slot={slot} /> : <GoneSlot {...{ session, month, slotId }} />}
    </Dialog>
  );
}

function NewSlot({ session, props, date, onClose }: SlotDialogProps & { readonly date: string }) {
  const [slot, setSlot] = useState<Slot>(() => ({
    id: newId(),
    date,
    time: "18:00",
    minutes: 45,
    theme: "",
    coachId: null,
    roomId: props.rooms[0]?.id ?? null,
    planId: null,
    note: "",
  }));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (session.act((w) => addShownSlot(w, slot, Date.now()))) session.say(`Added: ${slotName(slot)}.`);
    onClose();
  };
  return (
    <Dialog title={`New class, ${dayWords(slot.date)}`} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        <SlotFields
          slot={slot}
          props={props}
          writes
          first
          onChange={(part) => setSlot((now) => ({ ...now, ...part }))}
        />
        <button type="submit" className="button button-strong">
          Add the class
        </button>
      </form>
    </Dialog>
  );
}

function OpenSlot({ session, month, props, slot, onClose }: SlotDialogProps & { readonly slot: Slot }) {
  const change = (part: Partial<Slot>) => {
    session.act((w) => writeShownSlot(w, slot.id, part));
  };
  const takeOut = () => {
    if (session.act((w) => takeOutSlot(w, slot.id, { at: Date.now(), signedAt: null })))
      session.say(`Taken out of the month: ${slotName(slot)}.`);
    onClose();
  };
  const problems = month.problems.get(slot.id) ?? [];
  return (
    <div className={styles.form} data-live="">
      {problems.length > 0 ? (
        <ul className={styles.problems}>
          {problems.map((problem) => (
            <li key={`${problem.kind} ${problem.slots.join(" ")}`} className="notice">
              {problem.message}
            </li>
          ))}
        </ul>
      ) : null}
      <PlanOf slot={slot} month={month} props={props} />
      <SlotFields slot={slot} props={props} writes={month.writes} onChange={change} session={session} />
      {month.writes ? (
        <p className={`spread ${styles.last}`}>
          <span className="quiet small">Changes are saved as you make them.</span>
          <button type="button" className="button button-must" onClick={takeOut}>
            Take out of the month
          </button>
        </p>
      ) : null}
    </div>
  );
}

/** Leads to the plan, or for those who may not read it to the print sheet of its edition. */
function PlanOf({ slot, month, props }: { slot: Slot; month: MonthSnapshot; props: MonthPageProps }) {
  const plan = slot.planId === null ? undefined : month.plans.get(slot.planId);
  if (!plan) return null;
  const mayRead = props.plans.some((other) => other.id === plan.id);
  const title = planTitle(plan.title);
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
