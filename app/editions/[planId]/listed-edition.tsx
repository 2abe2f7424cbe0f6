/** One edition in the list of a plan's editions. */
import Link from "next/link";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { WithdrawnText } from "#app/_parts/reader-words.tsx";
import { clockTime, plural } from "#lib/plan/format.ts";
import type { ListedEdition } from "#server/editions/plan-editions.ts";
import { AcceptedFindings } from "./accepted-findings.tsx";
import { EditionWays } from "./edition-ways.tsx";
import styles from "./editions.module.css";
import { TemplateAct } from "./template-act.tsx";

interface Props {
  readonly edition: ListedEdition;
  /** Address of the list. */
  readonly path: string;
  /** The one that devices get. */
  readonly newest: boolean;
  readonly creates: boolean;
}

export function ListedEditionRow({ edition, path, newest, creates }: Props) {
  const { number, shortName, hash, lengthSeconds, signedByName, signedAt, round, note } = edition;
  const { withdrawn, damaged, accepted, classes } = edition;
  return (
    <li className={styles.edition} data-out={withdrawn || damaged ? true : undefined}>
      <div>
        <h2>
          <Link href={`${path}/${number}`}>Edition {number}</Link>
          {newest && !withdrawn && !damaged && <span className={styles.state}> in use</span>}
        </h2>
        <p>
          {shortName} · planned for {clockTime(lengthSeconds)} · signed off by {signedByName},{" "}
          <LocalTime at={signedAt} year />
          {round !== null && ` · round ${round}`} ·{" "}
          {classes === 0 ? "not taught yet" : plural(classes, "class", "classes")}
        </p>
        {note && <p className={styles.note}>{note}</p>}
        {withdrawn && (
          <p className="problem">
            <WithdrawnText of={withdrawn} />
          </p>
        )}
        {damaged && (
          <p className="problem">Damaged: the database no longer holds what was signed. It is not used anywhere.</p>
        )}
        <AcceptedFindings accepted={accepted} folded />
        <p className={styles.hash}>
          SHA-256 <code>{hash}</code>
        </p>
      </div>
      {!damaged && (
        <div className={styles.ways}>
          <EditionWays path={`${path}/${number}`} number={number} />
          {creates && <TemplateAct path={`${path}/${number}`} number={number} />}
        </div>
      )}
    </li>
  );
}
