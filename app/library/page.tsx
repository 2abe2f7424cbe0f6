/** The studio's moves with every fact about them, to search and to read. */
import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { readLibrary } from "#server/library/library.ts";
import { requirePerson } from "../_shell/person.ts";
import { Shell } from "../_shell/shell.tsx";
import { LibraryBrowser } from "./library-browser.tsx";

export const metadata: Metadata = { title: "Library" };

export default async function LibraryPage() {
  const visit = await requirePerson("/library");
  const library = readLibrary(visit.app, visit.who.actor);
  if (!library.ok) notFound();
  return (
    <Shell visit={visit} section="library">
      <h1>Library</h1>
      <LibraryBrowser moves={library.value.moves} note={SAFETY_NOTE} />
    </Shell>
  );
}
