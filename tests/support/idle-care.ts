/** What looks after the server, where nothing has to: it is asked and does nothing. */
import type { Care } from "#server/context/care.ts";

export const idleCare: Care = {
  backups: {
    begin: () => undefined,
    state: () => ({ runningSince: null, last: null, problem: null, nextAt: null, kept: [] }),
  },
  copies: { state: () => ({ last: null, changedAt: null, problem: null, paceMs: 30_000 }) },
  exports: { running: () => false, make: async () => ({ problem: "Nothing is exported here." }) },
  lastLook: () => null,
  clockJumps: () => [],
  troubles: () => [],
};
