"use client";
import Link from "next/link";
import { UndoButtons } from "#app/_parts/commands/undo-buttons.tsx";
import { saveWords } from "#lib/client/doc-session/save-state.ts";
/** Over the sheet: the month's name and what can be done with it, its counts, whose work is shown, who is here. */
import { timesIn } from "#lib/formats/canonical-times.ts";
import { monthTitle } from "#lib/formats/dates.ts";
import { agree, plural } from "#lib/plan/format.ts";
import type { TideLayout } from "#lib/tide/layout.ts";
import { monthCounts, openCounts } from "#lib/tide/month-counts.ts";
import { FindingCorner } from "./finding-corner.tsx";
import { LyingBody } from "./lying-body.tsx";
import styles from "./month.module.css";
import type { MonthDesk } from "./month-desk.ts";
import { MonthMenu } from "./month-menu.tsx";
import { RegularsChoice } from "./regulars-choice.tsx";
import { differentWords } from "./signed-words.ts";

interface HeadProps {
  readonly desk: MonthDesk;
  readonly layout: TideLayout;
}

export function MonthHead({ desk, layout }: HeadProps) {
  const { props, month } = desk;
  const counts = monthCounts(month.file, month.look.sums, desk.open.findings);
  const width = layout.group * 16;
  return (
    <header
      className={styles.head}
      style={
        { "--left": `${layout.date + layout.rail}px`, "--side": `${layout.findings || 240}px` } as React.CSSProperties
      }
    >
      <div className={styles.name}>
        <div className={styles.titleRow}>
          <h1>{monthTitle(props.month, desk.formats)}</h1>
          {month.writes && layout.kind !== "phone" && counts.empty > 0 && (
            <FillButton desk={desk} empty={counts.empty} />
          )}
          {props.may.sign && counts.classes > 0 && <SignButton desk={desk} must={counts.must} />}
          <MonthMenu desk={desk} />
        </div>
        <p className={styles.counts}>
          <b>
            {counts.classes} {agree(counts.classes, "class", "classes")}.
          </b>{" "}
          {counts.classes === 0 && month.writes ? "Press a day to add the first." : openCounts(counts)}{" "}
          <SignedWords desk={desk} />
        </p>
        <RegularsChoice desk={desk} />
      </div>
      {layout.kind !== "phone" && <LyingBody chosen={desk.chosen} width={width} />}
      <div className={styles.side}>
        <PresenceAndSaving desk={desk} />
        {layout.kind === "laptop" && !desk.choice.allCoaches && <FindingCorner desk={desk} />}
        {layout.kind === "laptop" && <CoachesChoice desk={desk} shown={layout.coaches} />}
      </div>
    </header>
  );
}

/** What is accepted and what is signed, each leading to its list. */
function SignedWords({ desk: { month, since, accepted, choose } }: { readonly desk: MonthDesk }) {
  const different = differentWords(since);
  const now = different && `, ${different} different now`;
  return (
    <>
      {accepted.length > 0 && (
        <button
          type="button"
          className={`text-button text-button-low ${styles.told}`}
          onClick={() => choose({ panel: { kind: "accepted" } })}
        >
          {accepted.length} accepted
        </button>
      )}{" "}
      {month.signed && (
        <button
          type="button"
          className={`text-button text-button-low ${styles.told}`}
          onClick={() => choose({ panel: { kind: "changes" } })}
        >
          Edition {month.signed.number} signed{now}
        </button>
      )}
    </>
  );
}

/** Where not every coach has a column, they take the place of what to mend on demand. */
function CoachesChoice({
  desk: { month, choice, choose },
  shown,
}: {
  readonly desk: MonthDesk;
  readonly shown: number;
}) {
  const all = Object.keys(month.file.coaches).length;
  if (!choice.allCoaches && shown >= all) return null;
  return (
    <button
      type="button"
      className="text-button text-button-low small"
      onClick={() => choose({ allCoaches: !choice.allCoaches })}
    >
      {choice.allCoaches ? "Show what to fix" : `Show all ${all} coaches`}
    </button>
  );
}

export function FillButton({ desk, empty }: { readonly desk: MonthDesk; readonly empty: number }) {
  return (
    <button type="button" className="button button-strong" onClick={() => desk.choose({ panel: { kind: "fill" } })}>
      Fill the {empty} empty
    </button>
  );
}

/** Dashed while something must be fixed; pressing it says what. Else it leads to where the month is read and signed. */
function SignButton({ desk, must }: { readonly desk: MonthDesk; readonly must: number }) {
  const first = desk.open.findings.find(({ level }) => level === "must");
  if (!first)
    return (
      <Link className="button" href={`/programme/${desk.props.month}/sign`}>
        Sign the month off
      </Link>
    );
  const press = () => {
    desk.choose({ finding: first.id });
    desk.session.say(
      `Not yet, ${plural(must, "finding")} must be fixed first: ${timesIn(first.message, desk.formats)}`,
    );
  };
  return (
    <button type="button" className={`button ${styles.sign}`} data-open="" onClick={press}>
      Sign the month off
    </button>
  );
}

function PresenceAndSaving({ desk: { month, session, props } }: { readonly desk: MonthDesk }) {
  const others = month.present.filter((person) => person.userId !== props.me.id);
  return (
    <p className={styles.state}>
      <span role="status" data-save={month.saveState}>
        {saveWords(month)}
      </span>
      {others.length > 0 && <span>Also here: {others.map((person) => person.name.split(" ")[0]).join(", ")}</span>}
      {month.ready && !month.writes && <span>read only</span>}
      {month.writes && <UndoButtons session={session} can={month} className={styles.undo} />}
    </p>
  );
}
