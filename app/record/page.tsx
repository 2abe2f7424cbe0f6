/** The studio's record: what was done that counts, by whom and when, and whether it still holds. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { NothingYet } from "#app/_parts/nothing-yet.tsx";
import { RecordHeadLine } from "#app/_parts/record-head.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { type RecordLine, type RecordPage, readRecord, recordChoices } from "#server/record/read-record.ts";
import { type Asked, addressOf, askedOf, queryOf, type SearchParams } from "./asked.ts";
import { RecordFilters } from "./filters.tsx";
import styles from "./record.module.css";
import { VerifyNow } from "./verify-now.tsx";

export const metadata: Metadata = { title: "Record" };

export default async function RecordListPage({ searchParams }: { readonly searchParams: Promise<SearchParams> }) {
  const asked = askedOf(await searchParams);
  const visit = await requirePerson(addressOf(asked));
  const found = await readRecord(visit.app, visit.who.actor, queryOf(asked));
  const choices = recordChoices(visit.app, visit.who.actor);
  if (!found.ok || !choices.ok) notFound();
  return (
    <Shell visit={visit} section="record">
      <h1>Record</h1>
      <p className={styles.lead}>
        Everything that counts in this studio, the latest first. Each row holds the hash of the one before it, so a row
        that somebody changes, removes or puts in later is found.
      </p>
      <section className={styles.proof} aria-label="Does it hold?">
        <RecordHeadLine head={found.value.head} />
        <VerifyNow />
      </section>
      <RecordFilters asked={asked} choices={choices.value} />
      <Rows page={found.value} asked={asked} />
    </Shell>
  );
}

function Rows({ page: { lines, older }, asked }: { readonly page: RecordPage; readonly asked: Asked }) {
  if (lines.length === 0)
    return (
      <NothingYet>
        <p>
          <b>No row passes this filter.</b> <Link href="/record">Show everything</Link>
        </p>
      </NothingYet>
    );
  return (
    <>
      <ol className={styles.rows} aria-label="Rows of the record, the latest first">
        {lines.map((line) => (
          <Row key={line.seq} line={line} />
        ))}
      </ol>
      <p className="acts">
        {asked.before && (
          <Link className="button" href={addressOf({ ...asked, before: undefined })}>
            Latest rows
          </Link>
        )}
        {older !== null && (
          <Link className="button" href={addressOf({ ...asked, before: String(older) })}>
            Older rows
          </Link>
        )}
      </p>
    </>
  );
}

function Row({ line: { seq, at, who, says, href, hash } }: { readonly line: RecordLine }) {
  return (
    <li className={styles.row}>
      <span className={styles.number} title={`SHA-256 ${hash}`}>
        {seq.toLocaleString("en-GB")}
      </span>
      <span className={styles.when}>
        <LocalTime at={at} year />
      </span>
      <span className={styles.says}>
        <b>{who}</b> {says}{" "}
        {href && (
          <Link href={href} aria-label={`Open what row ${seq} is about`}>
            Open
          </Link>
        )}
      </span>
    </li>
  );
}
