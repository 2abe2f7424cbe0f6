/** The classes taught from a signed edition: each compared with its plan, and where the time went. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { NothingYet } from "#app/_parts/nothing-yet.tsx";
import { SafetyNote } from "#app/_parts/safety-note.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { taughtTimes } from "#lib/floor/taught-class.ts";
import { clockTime, plural, secondsWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { readClassLogs, type TaughtClass } from "#server/class-log/read-logs.ts";
import { noteLogsSeen } from "#server/desk/see-logs.ts";
import styles from "./classes.module.css";
import { TaughtTable } from "./taught-table.tsx";

export const metadata: Metadata = { title: "Classes taught" };

interface PageProps {
  readonly params: Promise<{ planId: string; number: string }>;
}

export default async function ClassesPage({ params }: PageProps) {
  const { planId, number } = await params;
  const path = `/editions/${encodeURIComponent(planId)}/${encodeURIComponent(number)}/classes`;
  const visit = await requirePerson(path);
  const found = readClassLogs(visit.app, visit.who.actor, planId, Number(number));
  if (!found.ok) notFound();
  const { edition, classes } = found.value;
  noteLogsSeen(
    visit.app,
    visit.who.actor,
    classes.map(({ log }) => log.sessionId),
  );
  const { plan, clock } = edition.card.card;
  return (
    <Shell visit={visit} section="desk">
      <Link href="/desk" className={`link-line ${styles.back}`}>
        Desk
      </Link>
      <h1>{edition.title}: classes taught</h1>
      <p className={styles.lead}>
        Edition {edition.number}, {clockTime(clock.total)} as planned. {countWords(classes)}
      </p>
      {classes.length === 0 && (
        <NothingYet>
          <p>
            <b>Run this edition on a cue device.</b> After each class the device sends what really happened, as soon as
            it is online; planned and actual times then stand here side by side.
          </p>
        </NothingYet>
      )}
      {classes.map((taught, n) => (
        <OneClass key={taught.log.sessionId} {...{ plan, taught }} planned={clock.total} open={n === 0} />
      ))}
      <SafetyNote sentences={SAFETY_NOTE} />
    </Shell>
  );
}

/** Rehearsals are counted apart from classes. */
function countWords(told: readonly TaughtClass[]): string {
  const rehearsals = told.filter(({ log }) => log.kind === "rehearsal").length;
  const classes = told.length - rehearsals;
  const rehearsed = rehearsals > 0 ? ` ${plural(rehearsals, "rehearsal is", "rehearsals are")} listed too.` : "";
  if (classes > 0)
    return `${plural(classes, "class", "classes")} taught${told.length > 1 ? ", the latest first" : ""}.${rehearsed}`;
  if (rehearsals > 0) return `No class taught yet, ${plural(rehearsals, "rehearsal")}.`;
  return "No class log has arrived yet.";
}

interface OneClassProps {
  readonly plan: Plan;
  /** Seconds of the whole class. */
  readonly planned: number;
  readonly taught: TaughtClass;
  /** Shows it item by item at once; the others on request. */
  readonly open: boolean;
}

function OneClass({ plan, planned, taught: { log, roomName, deviceId }, open }: OneClassProps) {
  // Of the two lengths as they are shown, so that the sentence agrees with itself.
  const over = Math.round(log.elapsed) - Math.round(planned);
  const told = taughtTimes(plan, log, log.whole ? over : undefined);
  const id = `class-${log.sessionId}-${deviceId}`;
  return (
    <section className={styles.class} aria-labelledby={id}>
      <h2 id={id}>
        <LocalTime at={Date.parse(log.startedAt)} />, {roomName}
        {log.kind === "rehearsal" && ", a rehearsal"}
      </h2>
      <p>
        {log.whole
          ? `It took ${clockTime(log.elapsed)}, ${overWords(over)}.`
          : `It was ended early, after ${clockTime(log.elapsed)}.`}
      </p>
      {told.why.length > 0 && (
        <ul className={styles.why} aria-label="Where the time went">
          {told.why.map((words) => (
            <li key={words}>{words.charAt(0).toUpperCase() + words.slice(1)}.</li>
          ))}
        </ul>
      )}
      <details open={open}>
        <summary>Item by item</summary>
        <div className="table-scroll">
          <TaughtTable rows={told.rows} />
        </div>
      </details>
    </section>
  );
}

const overWords = (over: number): string =>
  over === 0 ? "as planned" : `${secondsWords(Math.abs(over))} ${over > 0 ? "more" : "less"} than planned`;
