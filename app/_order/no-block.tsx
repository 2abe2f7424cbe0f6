"use client";
/** There is no block to put in order: what a block is, and how to make one. */
import { newId } from "#app/_parts/new-id.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { insertItems } from "#lib/doc/write.ts";
import { itemById } from "#lib/plan/lookup.ts";

interface NoBlockProps {
  readonly session: PlanSession;
  /** Name of the chosen item, where that stands above the first heading. */
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
      <p>
        A block is what stands under one heading. {missing(above, hasHeadings)} Within a block items may change places,
        so that less has to be set up; nothing ever leaves its block.
      </p>
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

function missing(above: string | undefined, hasHeadings: boolean): string {
  if (!hasHeadings) return "This class has no heading yet: put one above the moves that belong together.";
  return above === undefined
    ? "Choose one below."
    : `${above} stands above the first heading: put one over it, or choose a block below.`;
}
