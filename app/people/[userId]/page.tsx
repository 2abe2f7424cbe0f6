/** One person over time: for that person, for leads and for managers. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { MarksList } from "#app/_marks/marks-list.tsx";
import { SeriesView } from "#app/_marks/series-view.tsx";
import { plural } from "#lib/plan/format.ts";
import type { FixedUnasked, ReturningFinding } from "#lib/progress/findings.ts";
import type { TaughtAgainstPlan } from "#lib/progress/taught.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { MARKS_SHOWN, type PersonOverTime, readPersonOverTime } from "#server/marks/person-view.ts";
import { LocalTime } from "../../_parts/local-time.tsx";
import { lengthWords } from "../../_parts/time-words.ts";
import { requirePerson } from "../../_shell/person.ts";
import { seePlace } from "../../_shell/see-place.ts";
import { Shell } from "../../_shell/shell.tsx";
import styles from "./over-time.module.css";
import { againstPlan, foundTimes, OVER_TIME } from "./over-time-words.ts";

export const metadata: Metadata = { title: "Over time" };

interface PageProps {
  readonly params: Promise<{ readonly userId: string }>;
  readonly searchParams: Promise<{ readonly from?: string | readonly string[] }>;
}

/** "20" of `?from=20`; anything else is the newest. */
const fromOf = (said: unknown): number => (typeof said === "string" && /^\d{1,6}$/.test(said) ? Number(said) : 0);

export default async function PersonPage({ params, searchParams }: PageProps) {
  const { userId } = await params;
  const visit = await requirePerson(`/people/${userId}`);
  const found = readPersonOverTime(visit.app, visit.who.actor, userId, fromOf((await searchParams).from));
  if (!found.ok) notFound();
  const { person, series, returning, unasked, classes, titles } = found.value;
  const mine = person.id === visit.who.actor.id;
  if (mine) await seePlace(visit.app, visit.who.actor, { kinds: ["marks"] });
  return (
    <Shell visit={visit}>
      <h1>{mine ? OVER_TIME.mine : person.name}</h1>
      <p className={styles.lead}>{mine ? OVER_TIME.leadMine : OVER_TIME.lead}</p>
      <Part title={OVER_TIME.marks} empty={OVER_TIME.noMarks} isEmpty={found.value.markCount === 0}>
        <SeriesView series={series} />
        <MarksInWords {...found.value} />
      </Part>
      <Part title={OVER_TIME.returning} empty={OVER_TIME.noneReturn} isEmpty={returning.length === 0}>
        <Returning returning={returning} titles={titles} />
      </Part>
      <Part title={OVER_TIME.unasked} empty={OVER_TIME.noneUnasked} isEmpty={unasked.length === 0}>
        <Unasked unasked={unasked} titles={titles} />
      </Part>
      <Part title={OVER_TIME.classes} empty={OVER_TIME.noClasses} isEmpty={classes.length === 0}>
        <Classes classes={classes} titles={titles} />
      </Part>
    </Shell>
  );
}

function MarksInWords({
  person,
  marks,
  markCount,
  from,
}: Pick<PersonOverTime, "person" | "marks" | "markCount" | "from">) {
  const older = from + MARKS_SHOWN;
  return (
    <details className={styles.more} open={from > 0}>
      <summary>{plural(markCount, "set of marks", "sets of marks")}, word for word</summary>
      <MarksList marks={marks} />
      {older < markCount && (
        <Link className="link-line" href={`/people/${person.id}?from=${older}`}>
          {OVER_TIME.older}
        </Link>
      )}
      {from > 0 && (
        <Link className="link-line" href={`/people/${person.id}`}>
          {OVER_TIME.newest}
        </Link>
      )}
    </details>
  );
}

interface PartProps {
  readonly title: string;
  readonly empty: string;
  readonly isEmpty: boolean;
  readonly children: ReactNode;
}

const Part = ({ title, empty, isEmpty, children }: PartProps) => (
  <section className={styles.part}>
    <h2>{title}</h2>
    {isEmpty ? <p className="quiet">{empty}</p> : children}
  </section>
);

type Titles = Pick<PersonOverTime, "titles">;

function Returning({ returning, titles }: Titles & { readonly returning: readonly ReturningFinding[] }) {
  return (
    <ul className={styles.rows}>
      {returning.map(({ rule, plans, of }) => (
        <li key={rule}>
          <p>
            <Link href={`/rules/${rule}`}>{ruleTitle(rule)}</Link>{" "}
            <span className="quiet">
              in {plans.length} of {plural(of, "plan")}
            </span>
          </p>
          <p className="small">
            {plans.map(({ planId, at, count }, i) => (
              <span key={planId}>
                {i > 0 ? " · " : ""}
                <Link href={`/plans/${planId}`}>{titles[planId]}</Link>, <LocalTime at={at} />
                {count > 1 ? `, ${foundTimes(count)}` : ""}
              </span>
            ))}
          </p>
        </li>
      ))}
    </ul>
  );
}

function Unasked({ unasked, titles }: Titles & { readonly unasked: readonly FixedUnasked[] }) {
  return (
    <ul className={styles.rows}>
      {unasked.map(({ planId, round, at, messages }) => (
        <li key={`${planId} ${round}`}>
          <p>
            <Link href={`/plans/${planId}`}>{titles[planId]}</Link>{" "}
            <span className="quiet">
              round {round}, <LocalTime at={at} />
            </span>
          </p>
          <ul>
            {messages.map((message) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

function Classes({ classes, titles }: Titles & { readonly classes: readonly TaughtAgainstPlan[] }) {
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>When</th>
            <th>Class</th>
            <th className="number">Planned</th>
            <th className="number">Taught</th>
            <th>How it went</th>
          </tr>
        </thead>
        <tbody>
          {classes.map((taught) => (
            <tr key={taught.sessionId}>
              <td>
                <LocalTime at={taught.at} />
              </td>
              <td>
                <Link href={`/editions/${taught.planId}/${taught.edition}/classes`}>{titles[taught.planId]}</Link>
              </td>
              <td className="number">{lengthWords(Math.round(taught.planned))}</td>
              <td className="number">{lengthWords(Math.round(taught.took + taught.held))}</td>
              <td>{againstPlan(taught)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
