/** Turns the host's answer about a session into its rights, or into the reason to close its socket. */

import type { CloseName } from "#lib/protocol/close.ts";
import { type DocName, formatDocName } from "#lib/protocol/messages.ts";
import type { EventLog } from "#server/base/log.ts";
import type { DocAccess, SessionInfo, SyncHost } from "./host.ts";

/** For any number of sessions within one turn: what only concerns the document is read once. */
export function accessOf(
  { host, log }: { readonly host: SyncHost; readonly log: EventLog },
  name: DocName,
): (session: SessionInfo) => CloseName | DocAccess {
  let asked: ReturnType<SyncHost["accessTo"]> | undefined;
  return (session) => {
    try {
      asked ??= host.accessTo(name);
      const access = asked(session);
      if (!access) return "notSignedIn";
      if (!access.exists) return "unknownDocument";
      return access.reads ? access : "noRight";
    } catch (error) {
      // Nobody keeps rights that cannot be read; the page tries again.
      log.error({ document: formatDocName(name), err: error }, "rights could not be read");
      return "storageFailing";
    }
  };
}

export const sameRights = (a: DocAccess, b: DocAccess): boolean => a.writes === b.writes && a.comments === b.comments;
