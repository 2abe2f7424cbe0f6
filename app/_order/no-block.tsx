"use client";
/** Shown where there is no block to reorder: what a block is, and how to make one. */
import { newId } from "#app/_parts/new-id.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { insertItems } from "#lib/doc/write.ts";
import { itemById } from "#lib/plan/lookup.ts";
import { noBlockWords } from "./order-words.ts";

interface NoBlockProps {
  readonly session: PlanSession;
  /** Name of the chosen item, where it is above the first heading. */
  readonly above: string | undefined;
  readonly hasHeadings: boolean;
  /** Told the id of the new heading. */
  readonly onMade: (headingId: string) => void;
}

export function NoBlock({ session, above, hasHeadings, onMade }: NoBlockProps) {
  useSnapshot(session);
  const make = () => {
    const id = newId();
    if (!session.act((w) => insertItems(w, null, [{ id, kind: "heading", title: "" }]))) return;
    if (itemById(session.getSnapshot().plan, id)) onMade(id);
  };
  return (
    <div>
      <p>{noBlockWords(above, hasHeadings)}</p>
      {session.canWrite && (above !== undefined || !hasHeadings) && (
        <p>
          <button type="button" className="button" onClick={make}>
            Put a heading at the top
          </button>
        </p>
      )}
    </div>
  );
}
