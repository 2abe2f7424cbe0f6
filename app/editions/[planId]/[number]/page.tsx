/** One signed edition: who signed it, where its sheets and tracks are, and whether it may still be taught. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { seePlace } from "#app/_shell/see-place.ts";
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
  await seePlace(app, who.actor, { planId, kinds: ["signed", "withdrawn"] });
  return (
    <Shell visit={visit} section="desk">
      <Signed signed={found.value} path={path} />
      {!found.value.withdrawn && mayWithdraw(app, who.actor, planId) ? (
        <Withdraw url={`/api${path}/withdraw`} number={found.value.number} />
      ) : null}
    </Shell>
  );
}

type SignedEdition = Extract<ReturnType<typeof readSignedEdition>, { ok: true }>["value"];

function Signed({ signed, path }: { readonly signed: SignedEdition; readonly path: string }) {
  const { title, number, card, signedAt, signedByName, note, shortName, withdrawn } = signed;
  return (
    <>
      <Link href="/desk">Desk</Link>
      <h1>
        {title}, edition {number}
      </h1>
      <p>
        {shortName} · {clockTime(card.card.clock.total)} · {card.card.room.name} · signed off by {signedByName},{" "}
        <LocalTime at={signedAt} />
      </p>
      {note ? <p className="quiet">{note}</p> : null}
      {withdrawn ? <p className="problem">{withdrawnWords(withdrawn)} Devices keep it but do not start it.</p> : null}
      <ul className={styles.ways}>
        {WAYS.map(([part, words]) => (
          <li key={part}>
            <a href={`${path}/${part}`}>{words}</a>
          </li>
        ))}
      </ul>
    </>
  );
}

const WAYS = [
  ["print", "Print sheet"],
  ["crew", "Crew sheet"],
  ["classes", "Classes taught"],
] as const;
