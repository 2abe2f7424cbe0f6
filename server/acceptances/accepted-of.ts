/** What an edition keeps of the acceptances: those that match what is found at its signing. */
import { listAcceptances } from "#db/repos/acceptance-repo.ts";
import { stillAccepted } from "#lib/acceptance/accepted.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { Springline } from "#server/context/springline.ts";

/** In the order in which they were accepted. */
export function acceptedOf(
  app: Pick<Springline, "db">,
  planId: string,
  findings: readonly Finding[],
): readonly AcceptanceView[] {
  const all = listAcceptances(app.db, planId);
  const { noLonger } = stillAccepted(findings, all);
  return all.filter((one) => !noLonger.includes(one));
}
