"use client";
import Link from "next/link";
import type { ReactNode } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
/** Where a move is used: plans, signed editions, classes to come. What the reader may not read is a number. */
import { dayAndTime } from "#lib/formats/dates.ts";
import { plural } from "#lib/plan/format.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { WhereUsed } from "#server/library/where-used.ts";
import { LocalTime } from "../../_parts/local-time.tsx";
import { STATE_WORDS } from "../../_parts/state-words.ts";
import styles from "./move.module.css";

export function WhereUsedList({ used }: { readonly used: WhereUsed }) {
  const { plans, editions, classes, hidden, unread } = used;
  const any = plans.length + editions.length + classes.length + hidden.plans + hidden.editions + hidden.classes > 0;
  if (!any && unread === 0) return <p className="quiet">No plan uses it yet.</p>;
  return (
    <div className={styles.used}>
      <Plans plans={plans} hidden={hidden.plans} />
      <Editions editions={editions} hidden={hidden.editions} />
      <Classes classes={classes} hidden={hidden.classes} />
      {unread > 0 ? (
        <p className="notice">{`${plural(unread, "plan")} cannot be read at the moment, so there may be more.`}</p>
      ) : null}
    </div>
  );
}

function Plans({ plans, hidden }: { readonly plans: WhereUsed["plans"]; readonly hidden: number }) {
  return (
    <Uses title="Plans" shown={plans.length} hidden={hidden} one="plan">
      {plans.map(({ planId, title, state, items, carried }) => (
        <li key={planId}>
          <Link href={`/plans/${planId}`}>{planTitle(title)}</Link>{" "}
          <span className="quiet small">
            {STATE_WORDS[state]}, {plural(items, "item")}
            {carried ? "; uses the move as its file had it" : ""}
          </span>
        </li>
      ))}
    </Uses>
  );
}

function Editions({ editions, hidden }: { readonly editions: WhereUsed["editions"]; readonly hidden: number }) {
  return (
    <>
      <Uses title="Signed editions" shown={editions.length} hidden={hidden} one="edition">
        {editions.map(({ planId, number, title, signedAt }) => (
          <li key={`${planId} ${number}`}>
            <Link href={`/editions/${planId}/${number}/print`}>{planTitle(title)}</Link>{" "}
            <span className="quiet small">
              edition {number}, signed <LocalTime at={signedAt} />
            </span>
          </li>
        ))}
      </Uses>
      {editions.length + hidden > 0 ? (
        <p className="quiet small">A signed edition keeps the move as it was when it was signed.</p>
      ) : null}
    </>
  );
}

function Classes({ classes, hidden }: { readonly classes: WhereUsed["classes"]; readonly hidden: number }) {
  const f = useFormats();
  return (
    <Uses title="Classes from now on" shown={classes.length} hidden={hidden} one="class" many="classes">
      {classes.map(({ date, time, title, roomName }) => (
        <li key={`${date} ${time} ${roomName ?? ""} ${title ?? ""}`}>
          <Link href={`/programme/${date.slice(0, 7)}`}>{dayAndTime(date, time, f)}</Link>{" "}
          <span className="quiet small">
            {[title ?? "a plan you may not read", roomName].filter(Boolean).join(", ")}
          </span>
        </li>
      ))}
    </Uses>
  );
}

interface UsesProps {
  readonly title: string;
  readonly shown: number;
  readonly hidden: number;
  readonly one: string;
  readonly many?: string;
  readonly children: ReactNode;
}

function Uses({ title, shown, hidden, one, many, children }: UsesProps) {
  if (shown + hidden === 0) return null;
  const more = shown > 0 ? " more" : "";
  return (
    <>
      <h3>{title}</h3>
      {shown > 0 ? <ul>{children}</ul> : null}
      {hidden > 0 ? (
        <p className="quiet small">
          {shown > 0 ? "And " : ""}
          {plural(hidden, `${one}`, many ?? `${one}s`).replace(" ", `${more} `)} that you may not read.
        </p>
      ) : null}
    </>
  );
}
