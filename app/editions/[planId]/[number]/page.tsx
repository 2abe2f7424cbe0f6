/** One signed edition: the class in plates, what the rules found, who signed it, and whether it may still be taught. */

import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { WithdrawnText } from "#app/_parts/reader-words.tsx";
import { RecordHeadLine } from "#app/_parts/record-head.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { seePlace } from "#app/_shell/see-place.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { withdrawnWords } from "#lib/card/withdrawn-words.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { clockTime } from "#lib/plan/format.ts";
import { can } from "#lib/policy/can.ts";
import { acceptedIn, mayWithdraw, readSignedEdition, seesFindings } from "#server/editions/editions.ts";
import { EditionWays } from "../edition-ways.tsx";
import styles from "../editions.module.css";
import { TemplateAct } from "../template-act.tsx";
import { SignedClass } from "./signed-class.tsx";
import { SignedFindings } from "./signed-findings.tsx";
import { Withdraw } from "./withdraw.tsx";

export const metadata: Metadata = { title: "Signed edition" };

interface PageProps {
  readonly params: Promise<{ planId: string; number: string }>;
}

export default async function EditionPage({ params }: PageProps) {
  const { planId, number } = await params;
  const all = `/editions/${encodeURIComponent(planId)}`;
  const path = `${all}/${encodeURIComponent(number)}`;
  const visit = await requirePerson(path);
  const { app, who } = visit;
  const found = readSignedEdition(app, who.actor, planId, Number(number));
  if (!found.ok) {
    if (found.error.code !== "edition-damaged") notFound();
    return <Damaged visit={visit} all={all} message={found.error.message} />;
  }
  const signed = found.value;
  await seePlace(app, who.actor, { planId, kinds: ["signed", "withdrawn"] });
  return (
    <Shell visit={visit} section="desk">
      <Back all={all} />
      <Head signed={signed} />
      <div className={styles.ways}>
        <EditionWays path={path} number={signed.number} />
        {can(who.actor, "plan.create") && <TemplateAct path={path} number={signed.number} strong />}
      </div>
      {seesFindings(app, who.actor, planId) && (
        <SignedFindings findings={signed.findings} accepted={acceptedIn(signed)} />
      )}
      <SignedClass card={signed.card.card} />
      <Proof hash={signed.hash}>
        <RecordHeadLine head={signed.record} />
      </Proof>
      {mayWithdraw(app, who.actor, planId) && (
        <Withdraw url={`/api${path}/withdraw`} {...shownAs(signed, visit.formats)} />
      )}
    </Shell>
  );
}

interface DamagedProps {
  readonly visit: Awaited<ReturnType<typeof requirePerson>>;
  readonly all: string;
  readonly message: string;
}

const Damaged = ({ visit, all, message }: DamagedProps) => (
  <Shell visit={visit} section="desk">
    <Back all={all} />
    <h1>A damaged edition</h1>
    <p className="problem">{message}</p>
  </Shell>
);

const Back = ({ all }: { readonly all: string }) => (
  <p className={styles.back}>
    <Link href="/desk" className="link-line">
      Desk
    </Link>
    <Link href={all} className="link-line">
      All editions
    </Link>
  </p>
);

type SignedEdition = Extract<ReturnType<typeof readSignedEdition>, { ok: true }>["value"];

const shownAs = ({ number, withdrawn }: SignedEdition, f: Formats) => ({
  number,
  withdrawn: withdrawn ? withdrawnWords(withdrawn, f) : null,
});

function Head({ signed }: { readonly signed: SignedEdition }) {
  const { title, number, card, signedAt, signedByName, note, round, shortName, withdrawn } = signed;
  return (
    <>
      <h1>
        {title}, edition {number}
      </h1>
      <p>
        {shortName} · {clockTime(card.card.clock.total)} · {card.card.room.name} · signed off by {signedByName},{" "}
        <LocalTime at={signedAt} year />
        {round !== null && `, in round ${round}`}
      </p>
      {note ? <p className={styles.note}>{note}</p> : null}
      {withdrawn ? (
        <p className="problem">
          <WithdrawnText of={withdrawn} /> No device starts it any more.
        </p>
      ) : null}
    </>
  );
}

/** How to show that this is what was signed. */
function Proof({ hash, children }: { readonly hash: string; readonly children: React.ReactNode }) {
  return (
    <section className={styles.proof} aria-labelledby="proof">
      <h2 id="proof">How to check it</h2>
      <p className={styles.hash}>
        SHA-256 of the plan as signed: <code>{hash}</code>
      </p>
      {children}
    </section>
  );
}
