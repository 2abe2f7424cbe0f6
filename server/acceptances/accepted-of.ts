/** What an edition keeps of the acceptances, those that match what is found at its signing, and what it leaves open. */
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

/** Every *look again* that no lead has accepted as it stands. */
export function lookAgainLeft(app: Pick<Springline, "db">, planId: string, findings: readonly Finding[]): Finding[] {
  const { of } = stillAccepted(findings, listAcceptances(app.db, planId));
  return findings.filter((finding) => finding.level === "look" && !of.has(finding));
}
