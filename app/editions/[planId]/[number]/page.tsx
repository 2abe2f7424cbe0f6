/** One signed edition: who signed it, where its sheets and tracks are, and whether it may still be taught. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Moment } from "#app/_shell/moment.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import { clockTime } from "#lib/plan/format.ts";
import { mayWithdraw, readSignedEdition } from "#server/editions/editions.ts";
import styles from "./edition.module.css";
import { Withdraw } from "./withdraw.tsx";

export const metadata: Metadata = { title: "Signed edition" };

interface PageProps {
  readonly params: Promise<{ planId: string; number: string }>;
}

export default async function EditionPage({ params }: PageProps) {
  const { planId, number } = await params;
  const path = `/editions/${encodeURIComponent(planId)}/${encodeURIComponent(number)}`;
  const visit = await requirePerson(path);
  const { app, who } = visit;
  const found = readSignedEdition(app, who.actor, planId, Number(number));
  if (!found.ok) {
    if (found.error.code !== "edition-damaged") notFound();
    return (
      <Shell visit={visit} section="desk">
        <Link href="/desk">Desk</Link>
        <h1>A damaged edition</h1>
        <p className="problem">{found.error.message}</p>
      </Shell>
    );
  }
  const { title, card, signedAt, signedByName, note, shortName, withdrawn } = found.value;
  return (
    <Shell visit={visit} section="desk">
      <Link href="/desk">Desk</Link>
      <h1>
        {title}, edition {found.value.number}
      </h1>
      <p>
        {shortName} · {clockTime(card.card.clock.total)} · {card.card.room.name} · signed off by {signedByName},{" "}
        <Moment at={signedAt} />
      </p>
      {note ? <p className="quiet">{note}</p> : null}
      {withdrawn ? (
        <p className="problem">{withdrawnWords(withdrawn)} Devices keep its card and do not start it.</p>
      ) : null}
      <ul className={styles.ways}>
        <li>
          <a href={`${path}/print`}>Print sheet</a>
        </li>
        <li>
          <a href={`${path}/crew`}>Crew sheet</a>
        </li>
        <li>
          <a href={`${path}/classes`}>Classes taught</a>
        </li>
      </ul>
      {!withdrawn && mayWithdraw(app, who.actor, planId) ? (
        <Withdraw url={`/api${path}/withdraw`} number={found.value.number} />
      ) : null}
    </Shell>
  );
}
