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
  const { head, items } = planParts(doc);
  const taken = new Map<string, TakenProposal>();
  const look = (map: Y.Map<unknown>, itemId: string | null) => {
    for (const [key, value] of map._map)
      if (key.startsWith(PROPOSAL_KEY) && !value.deleted) {
        const parts: unknown = map.get(key);
        if (typeof parts === "string") taken.set(key.slice(PROPOSAL_KEY.length), { itemId, parts: parts.split(" ") });
      }
  };
  look(head, null);
  for (const [id, map] of items) if (map instanceof Y.Map) look(map, id);
  return taken;
}
