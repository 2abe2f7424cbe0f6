/** A new move, for leads and managers; `?from=` another one's id begins as its copy. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { emptyDraft, type MoveDraft, moveDraft } from "#lib/library/draft.ts";
import { can } from "#lib/policy/can.ts";
import { readMoveDetail } from "#server/library/read-move.ts";
import { requirePerson } from "../../_shell/person.ts";
import { Shell } from "../../_shell/shell.tsx";
import { formSurroundings } from "../_form/form-setup.ts";
import { MoveForm } from "../_form/move-form.tsx";

export const metadata: Metadata = { title: "New move" };

interface PageProps {
  readonly searchParams: Promise<{ readonly from?: string | string[] }>;
}

export default async function NewMovePage({ searchParams }: PageProps) {
  const visit = await requirePerson("/library/new");
  const { app, who } = visit;
  if (!can(who.actor, "library.write")) notFound();
  const { from } = await searchParams;
  const source = typeof from === "string" ? readMoveDetail(app, who.actor, from) : null;
  const copied = source?.ok ? source.value.move : null;
  const start: MoveDraft = copied
    ? { ...moveDraft(copied, visit.formats), name: `${copied.name}, copy` }
    : emptyDraft(visit.formats);
  return (
    <Shell visit={visit} section="library">
      <Link className="link-line" href="/library">
        Library
      </Link>
      <h1>New move</h1>
      {copied ? <p className="quiet">It begins as a copy of {copied.name}, which stays as it is.</p> : null}
      <MoveForm userId={who.actor.id} id={null} base={null} start={start} {...formSurroundings(app, who.actor, null)} />
    </Shell>
  );
}
