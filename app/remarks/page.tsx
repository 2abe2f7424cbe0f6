/** The studio's stock remarks, for leads. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { RULES } from "#lib/rules/registry.ts";
import { readLibrary } from "#server/library/library.ts";
import { listRemarks } from "#server/remarks/remarks.ts";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { RemarkList } from "./remark-list.tsx";
import { REMARKS } from "./remark-words.ts";
import styles from "./remarks.module.css";

export const metadata: Metadata = { title: REMARKS.title };

export default async function RemarksPage() {
  const visit = await requirePerson("/remarks");
  const { app, who } = visit;
  const remarks = listRemarks(app, who.actor, true);
  const library = readLibrary(app, who.actor);
  if (!remarks.ok || !library.ok) notFound();
  const byName = (a: { readonly name: string }, b: { readonly name: string }) => a.name.localeCompare(b.name, "en");
  const links = {
    rules: RULES.map(({ id, title }) => ({ id, name: title })).toSorted(byName),
    moves: Object.entries(library.value.moves)
      .map(([id, { name }]) => ({ id, name }))
      .toSorted(byName),
  };
  return (
    <Shell visit={visit}>
      <h1>{REMARKS.title}</h1>
      <p className={styles.lead}>{REMARKS.about}</p>
      <div className={styles.page}>
        <RemarkList remarks={remarks.value.remarks} links={links} />
      </div>
    </Shell>
  );
}
