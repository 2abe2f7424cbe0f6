/** What can be done to a thread. Each returns the server's answer; the thread itself arrives over the page's socket. */
import type { PlanSession } from "#app/_session/session.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { type Sent, send } from "../../_parts/send.ts";

export const postThread = (session: PlanSession, anchor: Anchor, body: string): Promise<Sent> =>
  send("POST", `/api/plans/${session.planId}/threads`, { anchor, body });

export const postReply = (threadId: string, body: string): Promise<Sent> =>
  send("POST", `/api/threads/${threadId}/comments`, { body });

export const postSettled = (threadId: string, settled: boolean): Promise<Sent> =>
  send("POST", `/api/threads/${threadId}/settle`, { settled });
