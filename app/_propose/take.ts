/** Taking a proposal: the server lets one person have it, then this page writes it as one step of undo. */
import { type Sent, send } from "#app/_parts/send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { takeProposal } from "#lib/doc/take-proposal.ts";
import { takenInPart } from "#lib/proposal/part-words.ts";
import type { ProposalView } from "#lib/protocol/messages.ts";
import { TAKE } from "./propose-words.ts";
import { noteTaken } from "./taken-here.ts";

/** What was written; or why nothing was, in a sentence. */
export type Taking = { readonly ok: true } | { readonly ok: false; readonly message: string };

/** `chosen`: ids of the parts to take. */
export async function takeParts(
  session: PlanSession,
  proposal: ProposalView,
  chosen: ReadonlySet<string>,
): Promise<Taking> {
  if (!session.canWrite) return { ok: false, message: TAKE.noWriting };
  if (!isOnline(session)) return { ok: false, message: TAKE.offline };
  const claimed = await send<{ parts: readonly string[] }>("POST", `/api/proposals/${proposal.id}/take`, {
    parts: [...chosen],
  });
  if (!claimed.ok) return claimed;
  // Written now, it would arrive whenever the page is back, after a colleague has taken what was left free by then.
  if (!isOnline(session)) return { ok: false, message: TAKE.offline };
  const parts = proposal.parts.filter(({ id }) => chosen.has(id));
  let taken: readonly string[] = [];
  noteTaken(proposal.id);
  const acted = session.act((w) => {
    taken = takeProposal(w, { id: proposal.id, itemId: proposal.itemId, parts });
  });
  if (!acted) return { ok: false, message: TAKE.noWriting };
  if (taken.length === 0) return { ok: false, message: TAKE.notWritten };
  session.say(TAKE.taken(proposal.byName, takenInPart(session.getSnapshot().plan, proposal.parts, taken)));
  return { ok: true };
}

const isOnline = ({ saveState }: PlanSession): boolean => saveState === "saved" || saveState === "sending";

export const postDecline = (id: string, word: string): Promise<Sent> =>
  send("POST", `/api/proposals/${id}/decline`, { word });

export const postWithdraw = (id: string): Promise<Sent> => send("POST", `/api/proposals/${id}/withdraw`, {});
