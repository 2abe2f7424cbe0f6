/** Which proposals were taken, as the document notes it. `take-proposal.ts` writes these marks. */
import * as Y from "yjs";
import { PROPOSAL_KEY, planParts } from "./layout.ts";

export interface TakenProposal {
  /** The item that it is about, the heading of its block, or null for the items before the first heading. */
  readonly itemId: string | null;
  /** Ids of the parts that were taken. */
  readonly parts: readonly string[];
}

/** Proposals that were taken and not undone since, by id. */
export function takenProposals(doc: Y.Doc): ReadonlyMap<string, TakenProposal> {
  const taken = new Map<string, TakenProposal>();
  forEachMark(doc, ({ id, itemId, parts }) => {
    if (typeof parts === "string") taken.set(id, { itemId, parts: parts.split(" ") });
  });
  return taken;
}

/** Whether the document noted once that it was taken, and does so no more: it was undone. */
export function wasUndone(doc: Y.Doc, proposalId: string): boolean {
  let undone = false;
  forEachMark(doc, ({ id, parts }) => {
    if (id === proposalId && parts === undefined) undone = true;
  });
  return undone;
}

interface Mark {
  readonly id: string;
  readonly itemId: string | null;
  /** As it stands in the document, undefined once it was undone. */
  readonly parts: unknown;
}

/** The shared map itself remembers its keys: Yjs keeps what was deleted from one as a tombstone. */
function forEachMark(doc: Y.Doc, see: (mark: Mark) => void): void {
  const { head, items } = planParts(doc);
  const look = (map: Y.Map<unknown>, itemId: string | null) => {
    for (const [key, value] of map._map)
      if (key.startsWith(PROPOSAL_KEY)) {
        const id = key.slice(PROPOSAL_KEY.length);
        see({ id, itemId, parts: value.deleted ? undefined : map.get(key) });
      }
  };
  look(head, null);
  for (const [id, map] of items) if (map instanceof Y.Map) look(map, id);
}
