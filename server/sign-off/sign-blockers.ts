/** What prevents a plan from being signed off, each with a code and a sentence, in the order in which to deal with them. */

import { listMembers, namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanAuthors } from "#db/repos/plan-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { countThreads } from "#db/repos/thread-repo.ts";
import { agree } from "#lib/plan/format.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { Assessment } from "#server/context/assessment.ts";
import type { Springline } from "#server/context/springline.ts";

type BlockerCode = "not-handed-in" | "not-a-file" | "must-fix" | "check-broken" | "open-threads" | "only-author";
export interface Blocker {
  readonly code: BlockerCode;
  readonly message: string;
  readonly details?: unknown;
}

/** `signerId` is the person who would sign. */
export function signBlockers(
  app: Pick<Springline, "db">,
  row: PlanRow,
  signerId: string,
  assessed: Assessment,
): Blocker[] {
  return [
    ...notHandedIn(row),
    ...notAFile(assessed),
    ...mustFix(assessed.mustFix),
    ...brokenChecks(assessed.broken),
    ...openThreads(countThreads(app.db, row.id).open),
    ...onlyAuthor(app, row, signerId),
  ];
}

function notHandedIn(row: PlanRow): Blocker[] {
  if (row.state === "handed-in") return [];
  const message =
    row.state === "signed-off"
      ? "The plan is already signed off. Change it and offer it for reading again for another edition."
      : "The plan is not offered for reading yet. Its author has to do that first.";
  return [{ code: "not-handed-in", message, details: { state: row.state } }];
}

function notAFile({ notAFile: why }: Assessment): Blocker[] {
  if (!why) return [];
  return [{ code: "not-a-file", message: `The plan is not complete: ${why.message}`, details: why }];
}

function mustFix(findings: readonly Finding[]): Blocker[] {
  if (findings.length === 0) return [];
  const many = agree(findings.length, "One finding", `${findings.length} findings`);
  return [{ code: "must-fix", message: `${many} must be fixed first.`, details: { findings } }];
}

/** Nothing is known about what a crashed rule looks for; the studio standards can turn the rule off. */
function brokenChecks(findings: readonly Finding[]): Blocker[] {
  if (findings.length === 0) return [];
  const message = `${findings.map((f) => f.message).join(" ")} A manager can turn the check off in the studio standards.`;
  return [{ code: "check-broken", message, details: { findings } }];
}

function openThreads(open: number): Blocker[] {
  if (open === 0) return [];
  const message = agree(
    open,
    "One thread is still open. Settle it first.",
    `${open} threads are still open. Settle them first.`,
  );
  return [{ code: "open-threads", message, details: { open } }];
}

/**
 * Nobody may sign off a plan that only they wrote, unless the studio allows it. Where nobody else could sign it either, says
 * how the studio allows it: `mayAllow` for a signer who can do so themselves.
 */
function onlyAuthor(app: Pick<Springline, "db">, row: PlanRow, signerId: string): Blocker[] {
  if (readStudio(app.db)?.soleAuthorMaySign) return [];
  const members = listMembers(app.db); // an author that is not a person, such as a migration by the program, does not count
  const people = namesById(app.db);
  const others = readPlanAuthors(app.db, row.id).filter((id) => id !== signerId && people.has(id));
  if (others.length > 0) return [];
  const code = "only-author";
  if (members.some(({ id, roles }) => id !== signerId && roles.includes("lead")))
    return [{ code, message: "You are the only author of this plan. Somebody else has to sign it off." }];
  const mayAllow = members.some(({ id, roles }) => id === signerId && roles.includes("manager"));
  return [{ code, message: mayAllow ? ONLY_YOU_AND_YOURS : ONLY_YOU, details: { mayAllow } }];
}

const ONLY_YOU_AND_YOURS =
  "You are the only author of this plan, and nobody else here can sign it off. In a one-person studio you can allow yourself to.";
const ONLY_YOU =
  "You are the only author of this plan, and nobody else here can sign it off. Ask a manager to allow it under Studio, Sign-off, or to give somebody else the lead role.";
