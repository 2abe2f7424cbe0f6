/** How the server is, for its manager: each subject with its state, what was found and what to do. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { FreshPage } from "#app/_parts/fresh-page.tsx";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { type HealthReport, readHealthReport } from "#server/health/health-report.ts";
import styles from "./health.module.css";
import { StateSign } from "./state-sign.tsx";
import { HEALTH_WORDS, subjectWords, summaryWords } from "./state-words.ts";

export const metadata: Metadata = { title: "Health" };

const EVERY_MS = 15_000;

export default async function HealthPage() {
  const visit = await requirePerson("/studio/health");
  const report = await readHealthReport(visit.app, visit.who.actor);
  if (!report.ok) notFound();
  const { at, lines, troubles } = report.value;
  return (
    <Shell visit={visit} section="studio">
      <p>
        <a className={styles.back} href="/studio">
          Studio
        </a>
      </p>
      <h1>Health</h1>
      <p className="quiet">
        {summaryWords(lines)} As of <LocalTime at={at} />; this page renews itself.
      </p>
      <ul className={styles.lines} aria-label="What was checked">
        {lines.map((line) => (
          <Line key={line.what} line={line} />
        ))}
      </ul>
      <Troubles troubles={troubles} />
      <p className="quiet small">
        Whether the address, the proxy and the certificate are right is told by <code>npm run -s doctor</code>, on the
        server.
      </p>
      <FreshPage everyMs={EVERY_MS} />
    </Shell>
  );
}

function Line({ line: { what, is, found, todo } }: { readonly line: HealthReport["lines"][number] }) {
  return (
    <li className={styles.line}>
      <span className={styles.state} data-is={is}>
        <StateSign is={is} />
        {HEALTH_WORDS[is]}
      </span>
      <div className={styles.words}>
        <h2 className={styles.subject}>{subjectWords(what)}</h2>
        <p>{subjectWords(found)}</p>
        {todo ? (
          <p>
            <b>What to do:</b> {todo}
          </p>
        ) : null}
      </div>
    </li>
  );
}

function Troubles({ troubles }: Pick<HealthReport, "troubles">) {
  return (
    <section className={styles.troubles}>
      <h2>Last errors and warnings</h2>
      {troubles.length === 0 ? (
        <p>There have been none since the server was started.</p>
      ) : (
        <>
          <p className="quiet small">The server’s log says more of each.</p>
          <ul className={styles.lines}>
            {troubles.map(({ at, level, says }) => (
              <li key={says} className={styles.trouble}>
                <span className="quiet">
                  {level === "error" ? "Error" : "Warning"}, <LocalTime at={at} />
                </span>
                <span className={styles.words}>{says}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
