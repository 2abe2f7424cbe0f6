/** Every edition of a plan: who signed it and when, what was accepted, whether it may still be taught, and where its sheets are. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { RecordHeadLine } from "#app/_parts/record-head.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { noneInUseWords } from "#lib/card/withdrawn-words.ts";
import { type PlanEditions, readPlanEditions } from "#server/editions/plan-editions.ts";
import { CompareForm } from "./compare-form.tsx";
import styles from "./editions.module.css";
import { ListedEditionRow } from "./listed-edition.tsx";

export const metadata: Metadata = { title: "Editions" };

export default async function EditionsPage({ params }: { readonly params: Promise<{ planId: string }> }) {
  const { planId } = await params;
  const path = `/editions/${encodeURIComponent(planId)}`;
  const visit = await requirePerson(path);
  const found = readPlanEditions(visit.app, visit.who.actor, planId);
  if (!found.ok) notFound();
  const { title, editions, record, creates } = found.value;
  return (
    <Shell visit={visit} section="desk">
      <Link href="/desk" className="link-line">
        Desk
      </Link>
      <h1>{title}: editions</h1>
      <About planId={planId} of={found.value} />
      {editions.length > 1 && (
        <CompareForm
          action={`${path}/compare`}
          editions={editions}
          from={editions[1]?.number ?? 1}
          to={editions[0]?.number ?? 1}
        />
      )}
      <ol className={styles.editions} aria-label="Editions, the newest first">
        {editions.map((edition, n) => (
          <ListedEditionRow key={edition.number} edition={edition} path={path} newest={n === 0} creates={creates} />
        ))}
      </ol>
      <RecordHeadLine head={record} className={styles.record} />
    </Shell>
  );
}

function About({ planId, of: { editions, origin, opens } }: { readonly planId: string; readonly of: PlanEditions }) {
  return (
    <p>
      {editions.length === 1 ? "One edition." : `${editions.length} editions, the newest first.`} Each has a short name
      made from its hash, to be said aloud: devices and sheets show the same one.{" "}
      {origin && (
        <>
          The plan was made from{" "}
          <Link href={`/editions/${encodeURIComponent(origin.planId)}/${origin.number}`}>
            {origin.title}, edition {origin.number}
          </Link>
          .{" "}
        </>
      )}
      {editions[0]?.withdrawn && <b>{noneInUseWords(editions[0].number)} </b>}
      {opens && <a href={`/plans/${encodeURIComponent(planId)}`}>Open the plan</a>}
    </p>
  );
}
