/** The studio's rubric: read by everybody who is marked by it, changed by leads and managers. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { can } from "#lib/policy/can.ts";
import type { Rubric } from "#lib/rubric/rubric.ts";
import { readRubric } from "#server/marks/rubric.ts";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import styles from "./rubric.module.css";
import { RubricForm } from "./rubric-form.tsx";
import { RUBRIC } from "./rubric-words.ts";

export const metadata: Metadata = { title: "Rubric" };

export default async function RubricPage() {
  const visit = await requirePerson("/rubric");
  const { actor } = visit.who;
  const found = readRubric(visit.app, actor);
  if (!found.ok) notFound();
  const writes = can(actor, "rubric.write");
  return (
    <Shell visit={visit} section="rules">
      <h1>{RUBRIC.title}</h1>
      <p className={styles.lead}>{writes ? RUBRIC.leadWrites : RUBRIC.leadReads}</p>
      {writes ? <RubricForm rubric={found.value} /> : <AsRead rubric={found.value} />}
    </Shell>
  );
}

function AsRead({ rubric }: { readonly rubric: Rubric }) {
  return rubric.criteria.map(({ id, name, levels }) => (
    <section key={id} className={styles.criterion}>
      <h2>{name}</h2>
      <ol>
        {levels.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
    </section>
  ));
}
