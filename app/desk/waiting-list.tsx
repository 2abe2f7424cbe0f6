/** What waits for this person, the most urgent first, with the date of the class that it is for. */

import Link from "next/link";
import type { ReactNode } from "react";
import type { Waiting } from "#lib/desk/waiting.ts";
import { plural } from "#lib/plan/format.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import type { PlanListEntry } from "#server/plans/list-plans.ts";
import { LocalTime } from "../_parts/local-time.tsx";
import { ClassTime } from "../_parts/reader-words.tsx";
import { lengthWords } from "../_parts/time-words.ts";
import { ClassInSmall } from "./class-in-small.tsx";
import styles from "./desk.module.css";
import { TakeFromQueue } from "./take-from-queue.tsx";
import { cameBackWords, readBy, unreadLogs, unsignedWords, WAITING } from "./waiting-words.ts";

interface WaitingProps {
  readonly waiting: readonly Waiting[];
  /** When this person was here before, ms since the epoch; 0 for the first time: then nothing is called new. */
  readonly before: number;
  readonly plans: ReadonlyMap<string, PlanListEntry>;
  readonly me: string;
}

type Of<K extends Waiting["kind"]> = Extract<Waiting, { readonly kind: K }>;

export function WaitingList({ waiting, before, plans, me }: WaitingProps) {
  const rows = folded(waiting);
  return (
    <section className={`${styles.group} ${styles.waiting}`}>
      <h2>{WAITING.title}</h2>
      {rows.length === 0 ? <p className="quiet">{WAITING.nothing}</p> : null}
      <ul className={`hung ${styles.lines}`}>
        {rows.map(({ one, count }) => (
          <WaitingRow
            key={keyOf(one)}
            {...{ one, count, me }}
            plan={one.planId === null ? undefined : plans.get(one.planId)}
            isNew={before > 0 && one.at > before}
          />
        ))}
      </ul>
    </section>
  );
}

/** Logs of one edition are one line. */
function folded(waiting: readonly Waiting[]): { readonly one: Waiting; readonly count: number }[] {
  const rows = new Map<string, { one: Waiting; count: number }>();
  for (const one of waiting) {
    const row = rows.get(keyOf(one));
    rows.set(keyOf(one), { one: row?.one ?? one, count: (row?.count ?? 0) + 1 });
  }
  return [...rows.values()];
}

function keyOf(one: Waiting): string {
  if (one.kind === "named") return `named ${one.threadId}`;
  if (one.kind === "proposed") return `proposed ${one.proposalId}`;
  if (one.kind === "unsigned") return `unsigned ${one.classAt}`;
  if (one.kind === "changed") return `changed ${one.month} ${one.slot}`;
  return one.kind === "log" ? `log ${one.planId} ${one.edition}` : `${one.kind} ${one.planId}`;
}

interface RowProps {
  readonly one: Waiting;
  readonly count: number;
  readonly plan: PlanListEntry | undefined;
  readonly isNew: boolean;
  readonly me: string;
}

function WaitingRow({ one, count, plan, isNew, me }: RowProps) {
  return (
    <li className={styles.line}>
      <span className={styles.length}>
        {one.classAt !== null ? (
          <span className={styles.classAt}>
            <ClassTime at={one.classAt} />
          </span>
        ) : (
          one.kind !== "log" && <span>{WAITING.noClass}</span>
        )}
        {plan ? <ClassInSmall strip={plan.strip} lengthSeconds={plan.lengthSeconds} /> : null}
      </span>
      <span className={styles.words}>
        <Link className={styles.title} href={placeOf(one)}>
          {planTitle(one.title)}
        </Link>
        <span className={styles.facts}>
          {isNew ? <b className={styles.isNew}>{WAITING.isNew}</b> : null}
          <Facts {...{ one, count, plan, me }} />
        </span>
      </span>
      {one.kind === "offered" ? (
        <span className={styles.acts}>
          <TakeFromQueue planId={one.planId} title={planTitle(one.title)} reader={one.reader} me={me} />
        </span>
      ) : null}
    </li>
  );
}

function placeOf(one: Waiting): string {
  if (one.kind === "log") return `/editions/${one.planId}/${one.edition}/classes`;
  if (one.kind === "changed") return `/programme/${one.month}#class=${encodeURIComponent(one.slot)}`;
  if (one.planId === null) return `/programme/${one.month}`;
  const spot =
    one.kind === "named" ? `#thread-${one.threadId}` : one.kind === "proposed" ? `#proposal-${one.proposalId}` : "";
  return `/plans/${one.planId}${spot}`;
}

function Facts({ one, count, plan, me }: Omit<RowProps, "isNew">): ReactNode {
  switch (one.kind) {
    case "offered":
      return <Offered {...{ one, plan, me }} />;
    case "returned":
      return <Returned plan={plan} one={one} />;
    case "named":
      return (
        <>
          {one.byName} names you in a thread, <LocalTime at={one.at} />
          <q className={styles.note}>{one.words}</q>
        </>
      );
    case "proposed":
      return (
        <>
          {one.byName} proposes a change, <LocalTime at={one.at} />
        </>
      );
    case "unsigned":
      return unsignedWords(one.state);
    case "changed":
      return one.words;
    case "log":
      return (
        <>
          {unreadLogs(count)}, the last came <LocalTime at={one.at} />
        </>
      );
  }
}

function Offered({ one, plan, me }: { one: Of<"offered">; plan: PlanListEntry | undefined; me: string }) {
  const { round, byName, at, reader, note } = one;
  return (
    <>
      {byName}, <LocalTime at={at} />
      {round > 1 ? ` · round ${round}` : ""}
      {plan ? ` · ${lengthWords(plan.lengthSeconds)}` : ""} · <MustFix count={plan?.handedIn?.mustFix ?? null} />
      <OpenThreads plan={plan} />
      {reader ? (
        <b className={styles.reader}>
          {" "}
          · {readBy(reader.name, reader.id === me)} since <LocalTime at={reader.since} />
        </b>
      ) : null}
      {note ? <q className={styles.note}>{note}</q> : null}
    </>
  );
}

function OpenThreads({ plan }: { plan: PlanListEntry | undefined }) {
  if (!plan || plan.openThreads === 0) return null;
  return (
    <>
      {" · "}
      <a href={`/plans/${plan.id}#threads`}>{plural(plan.openThreads, "open thread")}</a>
    </>
  );
}

function Returned({
  plan,
  one: { withdrawn, byName, at, note, mainPoints },
}: {
  plan: PlanListEntry | undefined;
  one: Of<"returned">;
}) {
  return (
    <>
      {cameBackWords(withdrawn, byName)}, <LocalTime at={at} />
      <OpenThreads plan={plan} />
      {mainPoints.length > 0 ? (
        <ol className={styles.points}>
          {mainPoints.map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ol>
      ) : null}
      {note ? <q className={styles.note}>{note}</q> : null}
    </>
  );
}

function MustFix({ count }: { count: number | null }) {
  if (count === null) return <span className="look">not checked yet</span>;
  if (count === 0) return <span>nothing to fix</span>;
  return <strong className="must">{count} to fix</strong>;
}
