/** Rehearses a plan in writing on the floor's screen, without a class or a device. For everyone who may read the plan. */

import type { Metadata } from "next";
import Link from "next/link";
import { FormatsProvider } from "#app/_parts/formats.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import "#app/floor/floor.css";
import { draftCard } from "#server/plans/draft-card.ts";
import { OpenRehearsal } from "./open-rehearsal.tsx";

export const metadata: Metadata = { title: "Rehearsal" };

export default async function RehearsePage({ params }: { readonly params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { app, who, formats } = await requirePerson(`/plans/${encodeURIComponent(id)}/rehearse`);
  const card = draftCard(app, who.actor, id);
  return (
    <main className="floor">
      {card.ok ? (
        <FormatsProvider formats={formats}>
          <OpenRehearsal card={card.value} userId={who.actor.id} />
        </FormatsProvider>
      ) : (
        <div style={{ padding: "2rem" }}>
          <h1>Nothing to rehearse</h1>
          <p>{card.error.message}</p>
          <p>
            <Link className="button" href={card.error.status === 409 ? `/plans/${id}` : "/desk"}>
              {card.error.status === 409 ? "Back to the plan" : "Back to your desk"}
            </Link>
          </p>
        </div>
      )}
    </main>
  );
}
