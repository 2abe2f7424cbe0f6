/** Editing a move, for leads and managers. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { moveDraft } from "#lib/library/draft.ts";
import { can } from "#lib/policy/can.ts";
import { readMoveDetail } from "#server/library/read-move.ts";
import { requirePerson } from "../../../_shell/person.ts";
import { Shell } from "../../../_shell/shell.tsx";
import { formSurroundings } from "../../_form/form-setup.ts";
import { MoveForm } from "../../_form/move-form.tsx";

export const metadata: Metadata = { title: "Edit a move" };

export default async function EditMovePage({ params }: { readonly params: Promise<{ id: string }> }) {
  const { id } = await params;
  const visit = await requirePerson(`/library/${id}/edit`);
  const { app, who } = visit;
  const found = readMoveDetail(app, who.actor, id);
  if (!found.ok || !can(who.actor, "library.write")) notFound();
  const { move, updatedAt } = found.value;
  return (
    <Shell visit={visit} section="library">
      <Link className="link-line" href={`/library/${id}`}>
        {move.name}
      </Link>
      <h1>Edit {move.name}</h1>
      <MoveForm
        userId={who.actor.id}
        id={id}
        base={{ move, updatedAt }}
        start={moveDraft(move, visit.formats)}
        {...formSurroundings(app, who.actor, id)}
      />
    </Shell>
  );
}
