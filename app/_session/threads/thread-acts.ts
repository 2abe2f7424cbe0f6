/** What can be done to a thread. Each returns the server's answer; the thread itself arrives over the page's socket. */
import type { PlanSession } from "#app/_session/session.ts";
import type { NamedPerson } from "#lib/margin/named.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import type { Remark } from "#lib/remarks/match-remarks.ts";
import { type Sent, send } from "../../_parts/send.ts";

/** A comment as it is sent. */
export interface Written {
  readonly body: string;
  /** Ids of the people whose names stand in it after "@". */
  readonly mentions: readonly string[];
}

export const postThread = (
  session: PlanSession,
  anchor: Anchor,
  written: Written,
): Promise<Sent<{ readonly id: string }>> =>
  send("POST", `/api/plans/${session.planId}/threads`, { anchor, ...written });

export const postReply = (threadId: string, written: Written): Promise<Sent<{ readonly settled?: boolean }>> =>
  send("POST", `/api/threads/${threadId}/comments`, written);

/** `seen`: how many comments were in sight. */
export const postSettled = (threadId: string, settled: boolean, seen: number): Promise<Sent> =>
  send("POST", `/api/threads/${threadId}/settle`, { settled, seen });

const told = new Set<string>();

/** Tells the server, once, that a comment which names this person was in front of them. A failure is tried at the next sight. */
export async function postSeen(threadId: string, commentId: string): Promise<void> {
  if (told.has(commentId)) return;
  told.add(commentId);
  const sent = await send("POST", `/api/threads/${threadId}/seen`, { comments: [commentId] });
  if (!sent.ok) told.delete(commentId);
}

/** Who can be named. Asked at each comment: the plan may be shared meanwhile. */
export const fetchReaders = (planId: string): Promise<Sent<{ readonly people: readonly NamedPerson[] }>> =>
  send("GET", `/api/plans/${planId}/readers`);

export const fetchRemarks = (): Promise<Sent<{ readonly remarks: readonly Remark[] }>> => send("GET", "/api/remarks");
