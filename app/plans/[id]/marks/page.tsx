/** A lead marks a plan by the studio's rubric: a round of reading, or a class that was taught from it. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import styles from "#app/_marks/marks.module.css";
import { MarksForm } from "#app/_marks/marks-form.tsx";
import { MarksList } from "#app/_marks/marks-list.tsx";
import { MARKS } from "#app/_marks/marks-words.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { readPlanMarks } from "#server/marks/plan-marks.ts";
import { NothingYet } from "../../../_parts/nothing-yet.tsx";
import { requirePerson } from "../../../_shell/person.ts";
import { Shell } from "../../../_shell/shell.tsx";

export const metadata: Metadata = { title: "Marks" };

interface PageProps {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function MarksPage({ params, searchParams }: PageProps) {
  const { id } = await params;
  const visit = await requirePerson(`/plans/${id}/marks`);
  const found = readPlanMarks(visit.app, visit.who.actor, id);
  if (!found.ok) notFound();
  const { title, rounds, classes, marks } = found.value;
  const { of } = await searchParams;
  return (
    <Shell visit={visit}>
      <Link className="link-line" href={`/plans/${id}`}>
        {planTitle(title)}
      </Link>
      <h1>{MARKS.title}</h1>
      <p className={styles.lead}>{MARKS.lead}</p>
      <div className={styles.columns}>
        <section aria-label={MARKS.set}>
          {rounds.length + classes.length === 0 ? (
            <NothingYet>
              <p>{MARKS.nothingToMark}</p>
            </NothingYet>
          ) : (
            <MarksForm marks={found.value} of={typeof of === "string" ? of : null} />
          )}
        </section>
        <section>
          <h2>{MARKS.sofar}</h2>
          {marks.length === 0 ? <p className="quiet">{MARKS.none}</p> : <MarksList marks={marks} showWhom />}
        </section>
      </div>
    </Shell>
  );
}
