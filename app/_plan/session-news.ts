/** What a plan page makes of the server's news and of its connection. Pure. */
import type { ConnectionState } from "#lib/client/provider.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { SaveState, SessionSnapshot } from "./session-types.ts";

export type NewsState = Pick<SessionSnapshot, "rights" | "present" | "state" | "threads" | "serverFindings">;

/** The same object when the news changes nothing here. */
export function newsState(now: NewsState, news: News): NewsState {
  switch (news.t) {
    case "rights":
      return { ...now, rights: { writes: news.writes, comments: news.comments } };
    case "present":
      return { ...now, present: news.people };
    case "state":
      return { ...now, state: news.state };
    case "threads":
      return { ...now, threads: news.threads };
    case "findings":
      return { ...now, serverFindings: { hash: news.hash, findings: news.findings } };
    default:
      return now;
  }
}

export function saveStateOf(ready: boolean, link: ConnectionState): SaveState {
  if (link.closed !== null) return "ended";
  if (link.storageFailing) return "storage-failing";
  if (!link.connected) return ready ? "offline" : "opening";
  if (!link.synced) return ready ? "sending" : "opening";
  return link.waiting > 0 ? "sending" : "saved";
}
