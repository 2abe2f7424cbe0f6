/** Which earlier text matters most to a person who opens a plan: what is compared with unless they choose. */
import type { PlanState } from "#lib/protocol/messages.ts";
import type { ComparePoint } from "./rounds.ts";

interface Asking {
  readonly id: string;
  /** May return and sign it. */
  readonly leads: boolean;
  readonly state: PlanState;
  /** When the round that is open was offered, ms since the epoch; null while none is. */
  readonly offeredAt: number | null;
}

/**
 * For a lead what they last read, returned or signed before this round; where they never did, and for everybody else, the
 * last return, sign-off or withdrawal; in a first round, what the lead read first. Reading again within a round changes
 * none of it. Nothing while a plan is signed, or is written further after it was.
 */
export function usualPoint(points: readonly ComparePoint[], { id, leads, state, offeredAt }: Asking): string | null {
  const last = points.findLast(({ kind }) => ENDS.has(kind));
  const isSigned = last?.kind === "signed" || last?.kind === "edition";
  if (state === "signed-off" || (state === "in-writing" && isSigned)) return null;
  const own = leads ? points.filter(({ kind, byId }) => byId === id && READ.has(kind)) : [];
  const before = own.findLast(({ at }) => at < (offeredAt ?? Number.POSITIVE_INFINITY));
  return (before ?? last ?? own[0])?.id ?? null;
}

const ENDS: ReadonlySet<ComparePoint["kind"]> = new Set(["returned", "signed", "withdrawn", "edition"]);
const READ: ReadonlySet<ComparePoint["kind"]> = new Set(["reading", "returned", "signed", "edition"]);
