/** What is found in the month without what leads accepted as it stands, and that apart. */
import { useMemo } from "react";
import { monthStillAccepted } from "#lib/acceptance/month-accepted.ts";
import type { MonthLook } from "#lib/month/check/analyst.ts";
import type { MonthFinding } from "#lib/month/types.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";

export interface OpenFindings {
  /** The same object while nothing is accepted. */
  readonly look: MonthLook;
  readonly accepted: readonly { readonly finding: MonthFinding; readonly by: AcceptanceView }[];
}

/** An acceptance holds for a finding with the very values that were accepted, and no longer. */
export const useOpenFindings = (look: MonthLook, acceptances: readonly AcceptanceView[]): OpenFindings =>
  useMemo(() => openFindings(look, acceptances), [look, acceptances]);

function openFindings(look: MonthLook, acceptances: readonly AcceptanceView[]): OpenFindings {
  const { of } = monthStillAccepted(look.findings, acceptances);
  if (of.size === 0) return { look, accepted: [] };
  return {
    look: { ...look, findings: look.findings.filter((finding) => !of.has(finding)) },
    accepted: [...of].map(([finding, by]) => ({ finding, by })),
  };
}
