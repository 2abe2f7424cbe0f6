/** What was taught of a month, for coaches, leads and managers. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { readerFormats, requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { isMonth } from "#lib/calendar/days.ts";
import { monthTitle } from "#lib/formats/dates.ts";
import { readLookBack } from "#server/look-back/look-back.ts";
import { GroupPart } from "./group-part.tsx";
import { LateEditions } from "./late-editions.tsx";
import { LogTable } from "./log-table.tsx";
import { LOOK_BACK, lateSentence, sumSentence } from "./look-back-words.ts";
import styles from "./looking-back.module.css";
import { SumTable } from "./sum-tables.tsx";

interface PageProps {
  readonly params: Promise<{ readonly month: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  const { month } = await params;
  return { title: isMonth(month) ? `Looking back on ${monthTitle(month, await readerFormats())}` : "Looking back" };
}

export default async function LookingBackPage({ params }: PageProps) {
  const { month } = await params;
  const visit = await requirePerson(`/programme/${month}/looking-back`);
  const found = readLookBack(visit.app, visit.who.actor, month);
  if (!found.ok) notFound();
  const { sums, late, logs, remarks, people } = found.value;
  return (
    <Shell visit={visit} section="programme">
      <h1>Looking back on {monthTitle(month, visit.formats)}</h1>
      <p className={styles.lead}>
        {sumSentence(sums)} {lateSentence(sums)}
      </p>
      <p className={styles.lead}>{LOOK_BACK.what}</p>
      <p className={styles.screen}>
        <Link href={`/programme/${month}`}>Back to the month</Link>
      </p>
      <div className={styles.parts}>
        <SumTable title={LOOK_BACK.themes} head="Theme" sums={sums.themes} />
        <SumTable title={LOOK_BACK.coaches} head="Coach" sums={sums.coaches} />
        <SumTable title={LOOK_BACK.regulars} head="Regulars" sums={sums.regulars} />
        <GroupPart all={sums.groups} byRegulars={sums.groupsByRegulars} />
        <LateEditions late={late} />
        <LogTable logs={logs} remarks={remarks} people={people} me={visit.who.actor.id} />
      </div>
    </Shell>
  );
}
